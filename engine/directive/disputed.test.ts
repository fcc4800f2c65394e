import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { addDays, type Day } from '../foundation/day.ts';
import { disputesOf, modelOf, type RecordInput, readRecord } from '../record/index.ts';
import { assessAll, readDirective, STANDINGS } from './index.ts';
import { entry, rule, smallRecord } from './testing/rule.ts';

const START = '2015-01-01' as Day;
const TODAY = '2022-01-01' as Day;
const at = (n: number): Day => addDays(START, n);
type Read = { day: Day; total_h: number; landings: number };
const record = (readings: readonly Read[]) => {
  const entries = [
    entry('aircraft', 'ac', START, { registration: 'T', type: 'T', model: 'M', serial: '0100', built: START }),
    entry('part', 'sp', START, { part: 'spar', hand: 'left', part_number: 'P-1', built: START }),
    entry('fitment', 'sp', START, { into: 'ac', place: 'left_spar' }, { order: 1 }),
    ...readings.map(({ day, ...body }) => entry('reading', 'ac', day, body)),
  ];
  return modelOf(readRecord({ sparwright: 'record/1', day: TODAY, uses: ['private'], entries }));
};
const limits = [
  { hours_h: 900, is: 'at', of: 'part', since: 'new' },
  { landings: 900, is: 'more than', of: 'part', since: 'new' },
  { hours_h: 150, is: 'at', of: 'aircraft', since: 'effective' },
] as const;
const rules = limits.map((first) => readDirective(rule({ first }, { effective: '2019-01-01', issued: '2019-01-01' })));
const answer = (readings: readonly Read[], of = rules[0]!) => assessAll([of], record(readings), TODAY)[0]!;
const badness = (readings: readonly Read[], of: (typeof rules)[number]) => {
  const a = answer(readings, of);
  return { worst: STANDINGS.indexOf(a.standing.worst), left: a.treatAs.left?.value ?? Number.POSITIVE_INFINITY };
};

describe('readings that cross', () => {
  const steps = fc.array(fc.tuple(fc.integer({ min: 30, max: 300 }), fc.integer({ min: 0, max: 160 })), {
    minLength: 2,
    maxLength: 6,
  });
  const book = (s: readonly (readonly [number, number])[]): Read[] => {
    let [d, h] = [0, 0];
    return s.map(([days, hours]) => {
      d += days;
      h += hours;
      return { day: at(d), total_h: h, landings: h };
    });
  };
  it('are never softer than the book without the odd one, nor than the book without those it crosses', () => {
    fc.assert(
      fc.property(steps, fc.nat(5), fc.integer({ min: 0, max: 1100 }), fc.constantFrom(...rules), (s, n, wrong, of) => {
        const good = book(s);
        const i = n % good.length;
        const odd = { day: addDays(good[i]!.day, 3), total_h: wrong, landings: wrong };
        const all = [...good.slice(0, i + 1), odd, ...good.slice(i + 1)];
        const without = all.filter(
          (r) => r === odd || (r.day < odd.day ? r.total_h <= odd.total_h : r.total_h >= odd.total_h),
        );
        const both = badness(all, of);
        const what = of === rules[1] ? 'landings' : 'hours';
        const possible = disputesOf(record(all)).some((d) => d.what === what);
        for (const softer of possible ? [good, without] : [good]) {
          const one = badness(softer, of);
          expect(both.worst).toBeGreaterThanOrEqual(one.worst);
          if (both.worst === one.worst && both.worst > 2) expect(both.left).toBeLessThanOrEqual(one.left + 1e-6);
        }
      }),
      { numRuns: 150 },
    );
  });
  it('give the reading of the book, with what is left on the worse side, and name both rows', () => {
    const all = [
      { day: at(300), total_h: 300, landings: 300 },
      { day: at(600), total_h: 800, landings: 400 },
      { day: at(900), total_h: 420, landings: 500 },
      { day: at(1200), total_h: 500, landings: 600 },
    ];
    const a = answer(all);
    // Believing 800 h: 420 was 800 then, so 500 is 880 and 20 h are left; the book will show 520 by then.
    expect(a.treatAs).toMatchObject({ left: { value: 20, unit: 'h' }, dueAt: { total_s: 520 * 3600 } });
    expect(a.couldBecome.left?.value).toBe(400);
    expect(a.warnings.join()).toMatch(/entry e\d+ against e\d+, e\d+/);
    expect(a.working[0]?.entries).toHaveLength(3);
  });
  it('a correction settles it', () => {
    const crossing = smallRecord([
      entry('reading', 'ac', '2021-01-01', { total_h: 1900, landings: 1800 }),
    ]) as RecordInput;
    const wrong = crossing.entries.at(-1)!;
    const right = { ...wrong, id: 'e9', replaces: wrong.id, body: { total_h: 1190, landings: 1800 } };
    const of = readDirective(rule({ first: { hours_h: 1800, is: 'at', of: 'part', since: 'new' } }));
    const worst = (entries: RecordInput['entries']) =>
      assessAll([of], modelOf(readRecord({ ...crossing, entries })), TODAY)[0]?.standing.worst;
    expect(worst(crossing.entries)).toBe('overdue');
    expect(worst([...crossing.entries, right] as RecordInput['entries'])).toBe('not yet due');
  });
});
