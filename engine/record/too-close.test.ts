import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { addDays, type Day } from '../foundation/day.ts';
import { lifeOf } from './index.ts';
import { A, aircraft, entry, model, reading } from './testing/write.ts';

const check = (day: string, kind = 'hundred_hour') =>
  entry('inspection', A, day, { wording: kind, counts_as: [kind] }, { order: 5 } as never);
const found = (m: ReturnType<typeof model>) =>
  m.findings.filter((f) => f.code === 'record.more-inspections-than-hours');
const counted = (m: ReturnType<typeof model>, kind = 'hundred_hour') =>
  lifeOf(m, A, { until: m.day }).figure(`inspections.${kind}`, m.day).value;

describe('more inspections than hours allow', () => {
  const readings = [reading('2001-01-01', 100), reading('2001-03-01', 110), reading('2002-01-01', 260)];
  it('name both rows, and the second may count or not', () => {
    const m = model([aircraft(), ...readings, check('2001-01-10'), check('2001-02-20'), check('2001-12-01')]);
    expect(found(m)).toHaveLength(1);
    expect(found(m)[0]?.entries).toHaveLength(2);
    expect(found(m)[0]?.text).toContain('at most 10 h');
    expect(counted(m)).toEqual({ low: 2, high: 3 });
  });
  it('are not seen where hours allow them, where the calendar counts, or where nothing was read since', () => {
    expect(found(model([aircraft(), ...readings, check('2001-01-10'), check('2001-12-01')]))).toEqual([]);
    expect(
      found(model([aircraft(), ...readings, check('2001-01-10', 'annual'), check('2001-02-20', 'annual')])),
    ).toEqual([]);
    expect(found(model([aircraft(), ...readings, check('2002-02-01'), check('2002-03-01')]))).toEqual([]);
  });
  it('three at one day are two in doubt', () => {
    const m = model([aircraft(), ...readings, check('2001-06-01'), check('2001-06-01'), check('2001-06-01')]);
    expect(found(m)).toHaveLength(2);
    expect(counted(m)).toEqual({ low: 1, high: 3 });
  });
  it('another row of the book never lowers the greatest count, for random books', () => {
    const days = fc.array(fc.integer({ min: 1, max: 720 }), { minLength: 1, maxLength: 8 });
    fc.assert(
      fc.property(days, fc.integer({ min: 1, max: 720 }), (some, more) => {
        const at = (n: number) => check(addDays('2000-01-01' as Day, n));
        const before = counted(model([aircraft(), ...readings, ...some.map(at)]));
        const after = counted(model([aircraft(), ...readings, ...some.map(at), at(more)]));
        expect(before.high).toBe(some.length);
        expect(after.high).toBe(some.length + 1);
        expect(after.low).toBeGreaterThanOrEqual(before.low - 1);
        expect(after.low).toBeGreaterThanOrEqual(1);
      }),
      { numRuns: 100 },
    );
  });
});
