import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { parseDocument } from './document.ts';
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
