import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { addUp } from './add-up.ts';

const row = fc.record({ flown: fc.integer({ min: 0, max: 36_000 }), stated: fc.boolean() });
const slip = fc.integer({ min: 181, max: 400_000 }).chain((n) => fc.constantFrom(n, -n));

describe('carried totals added up again', () => {
  it('finds exactly the slips that were made, at their rows and with their amount', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1_000_000, max: 40_000_000 }),
        fc.array(row, { minLength: 1, maxLength: 40 }),
        fc.dictionary(fc.integer({ min: 0, max: 39 }).map(String), slip, { maxKeys: 5 }),
        (brought, rows, slips) => {
          // The clerk carries on from what he wrote; a slip can stand only in a total that he wrote down.
          let at = brought;
          const made = new Map<number, number>();
          const book = rows.map(({ flown, stated }, i) => {
            const wrong = stated ? (slips[String(i)] ?? 0) : 0;
            if (wrong) made.set(i, wrong);
            at += flown + wrong;
            return { flown, total: stated ? at : undefined };
          });
          const found = addUp(book, brought, 180);
          expect(new Map(found.flatMap((f, i) => (f.slip === null ? [] : [[i, f.slip]])))).toEqual(made);
        },
      ),
    );
  });
  it('a clerk who comes back to the right total is told of two slips that take each other away', () => {
    const rows = [
      { flown: 3600, total: 103_600 },
      { flown: 7200, total: 114_400 },
      { flown: 1800, total: 112_600 },
    ];
    expect(addUp(rows, 100_000, 180).map((r) => r.slip)).toEqual([null, 3600, -3600]);
  });
  it('says nothing where nothing is brought forward, and takes the first stated total', () => {
    expect(addUp([{ flown: 3600 }, { flown: 3600, total: 90_000 }, { flown: 60, total: 90_060 }], null, 180)).toEqual([
      { sum: null, slip: null },
      { sum: null, slip: null },
      { sum: 90_060, slip: null },
    ]);
  });
  it('a row of remarks alone changes nothing', () => {
    expect(addUp([{ flown: 3600 }, {}, { flown: 60, total: 103_660 }], 100_000, 0)).toEqual([
      { sum: 103_600, slip: null },
      { sum: 103_600, slip: null },
      { sum: 103_660, slip: null },
    ]);
  });
  it('counts landings without tolerance', () => {
    expect(addUp([{ flown: 3, total: 104 }], 100, 0)[0]).toEqual({ sum: 103, slip: 1 });
  });
  it('rounding within the tolerance never piles up', () => {
    const rows = Array.from({ length: 50 }, (_, i) => ({ flown: 3420, total: 3600 * (i + 1) }));
    expect(addUp(rows, 0, 180).every((r) => r.slip === null)).toBe(true);
  });
});
