import fc from 'fast-check';
import { expect, it } from 'vitest';
import { directives } from '../../examples/index.ts';
import type { PendingAircraft } from '../../store/index.ts';
import { likelyFirst } from './order.ts';

const models = new Map([1, 2, 3, 4, 5, 6].map((n) => [`a${n}`, ['W4', 'W2-A', 'W4-T'][n % 3]!]));
const w21 = directives.find((d) => JSON.stringify(d.affects).includes('W2-A'))!;
const lacking = (...ids: string[]): PendingAircraft[] => ids.map((aircraft) => ({ aircraft, lacks: 'answers' }));

it('aircraft of the models that the last directive names come first, those that only lack the day last', () => {
  const pending = [{ aircraft: 'a1', lacks: 'day' } as const, ...lacking('a2', 'a3', 'a4', 'a5')];
  expect(likelyFirst(pending, w21, models).map((p) => p.aircraft)).toEqual(['a4', 'a2', 'a3', 'a5', 'a1']);
});
it('a directive that names no model for one of its actions may affect any', () => {
  const open = { affects: {}, actions: [{ affects: { models: [{ model: 'W4' }] } }, {}] };
  expect(likelyFirst(lacking('a1', 'a2', 'a3'), open, models).map((p) => p.aircraft)).toEqual(['a1', 'a2', 'a3']);
});
it('none is left out and none comes twice', () => {
  const some = fc.uniqueArray(fc.constantFrom(...models.keys()), { minLength: 1 });
  fc.assert(
    fc.property(some, fc.constantFrom(...directives, undefined), (ids, d) => {
      expect(
        likelyFirst(lacking(...ids), d, models)
          .map((p) => p.aircraft)
          .sort(),
      ).toEqual([...ids].sort());
    }),
  );
});
