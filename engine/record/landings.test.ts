import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { addDays, type Day } from '../foundation/day.ts';
import { lifeOf } from './index.ts';
import { A, aircraft, entry, model, reading, use } from './testing/write.ts';

const landings = (m: ReturnType<typeof model>, fact = 'landings.total') =>
  lifeOf(m, A, { until: m.day }).figure(fact, m.day).value;
const exact = (n: number) => ({ low: n, high: n });

describe('landings that the book counts are never lost', () => {
  it('where no hours lie between two readings', () => {
    const rows = [reading('2001-01-01', 10, 50), reading('2001-03-01', 10, 60)];
    expect(landings(model([aircraft(), ...rows]))).toEqual(exact(60));
    expect(landings(model([aircraft(), use('2000-01-01', undefined, 'tow'), ...rows]), 'landings.tow')).toEqual(
      exact(60),
    );
    expect(landings(model([aircraft(), ...rows, reading('2002-01-01', 20, 70)]))).toEqual(exact(70));
  });
  it('where the rows list all hours and fewer landings', () => {
    const row = entry('flights', A, '2001-02-01', { hours_h: 5, landings: 3, use: 'tow' });
    const m = model([aircraft(), reading('2001-01-01', 10, 50), row, reading('2001-03-01', 15, 60)]);
    expect(landings(m)).toEqual(exact(60));
  });
  it('where only landings were read after the last total', () => {
    const only = entry('reading', A, '2001-03-01', { landings: 64 });
    expect(landings(model([aircraft(), reading('2001-01-01', 10, 50), only]))).toEqual(exact(64));
  });
  it('for random books the total is the last that the book declares', () => {
    const step = fc.tuple(
      fc.integer({ min: 1, max: 300 }),
      fc.integer({ min: 0, max: 40 }),
      fc.integer({ min: 0, max: 30 }),
    );
    fc.assert(
      fc.property(fc.array(step, { minLength: 1, maxLength: 6 }), fc.constantFrom('tow', null), (steps, u) => {
        let [d, h, n] = [0, 0, 0];
        const rows = steps.map(([days, hours, more]) => {
          d += days;
          h += hours % 5 === 0 ? 0 : hours;
          n += more;
          return reading(addDays('2000-01-01' as Day, d), h, n);
        });
        const uses = u ? [use('2000-01-01', undefined, u)] : [];
        expect(landings(model([aircraft(), ...uses, ...rows]))).toEqual(exact(n));
      }),
      { numRuns: 200 },
    );
  });
});
