import { expect, it } from 'vitest';
import type { record } from '../../engine/index.ts';
import { partsAt } from './parts.ts';

const thing = (id: string, what: string, kind: 'aircraft' | 'part' = 'part') =>
  ({ id, kind, what, hand: 'none', attributes: {} }) as unknown as record.Thing;
const aircraft = thing('aircraft:1', 'aircraft', 'aircraft');
const parts = [
  thing('wing:L', 'wing'),
  thing('spar:L', 'inboard_spar'),
  thing('spar:R', 'inboard_spar'),
  thing('outer:L', 'outboard_spar'),
  thing('doubler:R', 'walkway_doubler'),
];
const at = (place: string, asked?: string, of: readonly record.Thing[] = parts) =>
  partsAt({ thing: aircraft, parts: of }, place, asked).map((p) => p.id);

it.each([
  ['the place names a kind of part', 'Walkway doubler, rivet row 2', undefined, ['doubler:R']],
  ['the place names another one', 'Outboard spar, splice', undefined, ['outer:L']],
  [
    'outboard of something is no outboard spar',
    'Lower spar cap, first hole outboard of the root',
    undefined,
    ['spar:L', 'spar:R'],
  ],
  ['a kind is asked for', 'Lower spar cap', 'wing', ['wing:L']],
  ['one part is asked for', 'Lower spar cap', 'spar:R', ['spar:R']],
  ['the aircraft itself is asked for', 'Lower spar cap', 'aircraft:1', ['aircraft:1']],
])('%s', (_, place, asked, ids) => expect(at(place, asked)).toEqual(ids));
it('the kind that a document was made for comes before the words of its place, and falls back on them', () => {
  const made = (kind: string, asked?: string) =>
    partsAt({ thing: aircraft, parts }, 'Walkway doubler', asked, kind).map((p) => p.id);
  expect(made('outboard_spar')).toEqual(['outer:L']);
  expect(made('outboard_spar', 'wing')).toEqual(['wing:L']);
  expect(made('tail')).toEqual(['doubler:R']);
});
it('without spars the wings, without wings the aircraft', () => {
  expect(at('Lower spar cap', undefined, [parts[0]!, parts[4]!])).toEqual(['wing:L']);
  expect(at('Lower spar cap', undefined, [parts[4]!])).toEqual(['aircraft:1']);
  expect(at('Lower spar cap', undefined, [])).toEqual(['aircraft:1']);
});
it('a part that it does not have is refused, with those it has', () => {
  expect(() => at('Lower spar cap', 'spar:X')).toThrow(expect.objectContaining({ code: 'server.not-found' }));
  try {
    at('x', 'spar:X');
  } catch (e) {
    expect((e as { detail: { allowed: string } }).detail.allowed).toContain('spar:R');
  }
});
