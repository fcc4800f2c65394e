import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { parseDocument, zHours } from './document.ts';
import { isRefusal } from './refusal.ts';

const zForm: z.ZodType = z.lazy(() =>
  z.union([
    z.strictObject({ first_of: z.array(zForm).min(2) }),
    z.strictObject({ landings: z.int(), is: z.literal('at') }),
    z.strictObject({ hours_h: z.number(), is: z.literal('at') }),
  ]),
);
const given = (input: unknown): string => {
  try {
    parseDocument(z.strictObject({ first: zForm, name: z.string() }), input, 'rule');
  } catch (e) {
    if (isRefusal(e)) return e.detail.given;
  }
  return 'taken';
};

describe('a refused document', () => {
  it('names the place deep in a choice of forms, by the form that is nearest', () => {
    expect(
      given({
        name: 'a',
        first: {
          first_of: [
            { hours_h: 5, is: 'at' },
            { hours_h: 'x', is: 'at' },
          ],
        },
      }),
    ).toMatch(/^rule, at first\.first_of\.1\.hours_h: .*number/);
  });
  it('names several places, and how many more there are', () => {
    const said = given({ name: 3, first: { landings: 1.5, is: 'at' }, other: 1 });
    expect(said).toContain('at name:');
    expect(said).toContain('at first.landings:');
    expect(said).toContain('"other"');
    expect(said).not.toContain('more)');
  });
  it('takes what fits', () => expect(given({ name: 'a', first: { landings: 1, is: 'at' } })).toBe('taken'));
});

it('hours that no aircraft has flown are refused, in every writing', () => {
  for (const h of [1_000_000, '1000000', '999999:59', -1_000_000]) expect(zHours.safeParse(h).success).toBe(true);
  for (const h of [1e12, 1_000_001, '1000001', '1000001:00', -1_000_001])
    expect(zHours.safeParse(h).error?.issues[0]?.message).toContain('at most 1000000 hours');
});
