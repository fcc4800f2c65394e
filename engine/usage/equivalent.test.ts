import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { addForms, linearExtremes } from '../foundation/region/index.ts';
import { type Day, record } from '../index.ts';
import { answerUsage } from './answer.ts';
import { equivalentHours } from './equivalent.ts';
import { answerOfLife, equivalentLife } from './equivalent-life.ts';
import { changed, MADE_UP, SYNTHETIC_1 } from './testing/documents.ts';

const RATIOS = [
  { use: 'private', ratio: 1 },
  { use: 'tow', ratio: 3 },
  { use: 'patrol', ratio: 0.5 },
];
type Row = [use: string, low_h: number, high_h: number];
const hours = (rows: readonly Row[], total?: readonly [number, number]) => ({
  by_use: rows.map(([use, low_h, high_h]) => ({ use, low_h, high_h })),
  ...(total ? { total: { low_h: total[0], high_h: total[1] } } : {}),
});
const of = (rows: readonly Row[], total?: readonly [number, number], safe: number | null = null) =>
  equivalentHours(changed({ hours: hours(rows, total) }), RATIOS, safe)!;

describe('U13 equivalent hours', () => {
  it('uses that are settled: a plain weighted sum', () => {
    const e = of(
      [
        ['private', 100, 100],
        ['tow', 20, 20],
      ],
      undefined,
      1000,
    );
    expect(e.equivalent_h).toEqual({ low: 160, high: 160 });
    expect(e.used).toEqual({ low: 0.16, high: 0.16 });
  });
  it('bounds hold together with the total: an hour is not counted as two uses', () => {
    const e = of(
      [
        ['private', 60, 95],
        ['tow', 5, 40],
      ],
      [100, 100],
    );
    // Least: 95 private and 5 towing; greatest: 60 and 40. Apart from the total it would be 75 to 215.
    expect(e.equivalent_h).toEqual({ low: 110, high: 180 });
    expect(e.flown_h).toEqual({ low: 100, high: 100 });
  });
  it('the total narrows the hours of each use', () => {
    const e = of(
      [
        ['private', 0, 95],
        ['tow', 0, 100],
      ],
      [100, 100],
    );
    expect(e.byUse[1]!.flown_h).toEqual({ low: 5, high: 100 });
  });
  it('a use without loads counts as the hardest known one, and says so', () => {
    const e = of([
      ['private', 100, 100],
      ['drop', 10, 10],
    ]);
    expect(e.byUse[1]).toEqual({ use: 'drop', flown_h: { low: 10, high: 10 }, ratio: 3, assumed: true });
    expect(e.equivalent_h.high).toBe(130);
  });
  it('a total alone may be of any use whose loads are known', () => {
    expect(of([], [90, 100]).equivalent_h).toEqual({ low: 45, high: 300 });
  });
  it('no hours, no answer', () => {
    expect(equivalentHours(changed(), RATIOS, null)).toBe(null);
    expect(equivalentHours(changed({ hours: { by_use: [] } }), RATIOS, null)).toBe(null);
  });
  it('a total that the uses cannot make is refused with both named', () => {
    expect(() => of([['private', 10, 20]], [100, 100])).toThrow(
      /hours\.total, 100 to 100 h, as the sum of private 10 to 20 h/,
    );
  });
  const row = fc
    .tuple(
      fc.constantFrom('private', 'tow', 'patrol', 'drop'),
      fc.integer({ min: 0, max: 500 }),
      fc.integer({ min: 0, max: 500 }),
    )
    .map(([use, low, more]): Row => [use, low, low + more]);
  it('law: between the least and the greatest ratio times the hours, and the ends are reached', () => {
    fc.assert(
      fc.property(
        fc.uniqueArray(row, { selector: (r) => r[0], minLength: 1 }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (rows, k) => {
          const [least, most] = [rows.reduce((t, r) => t + r[1], 0), rows.reduce((t, r) => t + r[2], 0)];
          const total = Math.round(least + k * (most - least));
          const e = of(rows, [total, total]);
          expect(e.equivalent_h.low).toBeGreaterThanOrEqual(0.5 * total - 1e-6);
          expect(e.equivalent_h.high).toBeLessThanOrEqual(3 * total + 1e-6);
          const ratio = (use: string) => RATIOS.find((r) => r.use === use)?.ratio ?? 3;
          // Greedy filling is the exact answer to one sum: cheapest first for the least, dearest first for the greatest.
          const fill = (sorted: readonly Row[]) => {
            let left = total - least;
            return sorted.reduce((t, [use, low, high]) => {
              const more = Math.min(left, high - low);
              left -= more;
              return t + ratio(use) * (low + more);
            }, 0);
          };
          const rising = [...rows].sort((a, b) => ratio(a[0]) - ratio(b[0]));
          expect(e.equivalent_h.low).toBeCloseTo(fill(rising), 4);
          expect(e.equivalent_h.high).toBeCloseTo(fill(rising.reverse()), 4);
        },
      ),
    );
  });
});

let n = 0;
const entry = (kind: string, subject: string, day: string, body: object, more: object = {}) => ({
  id: `e${++n}`,
  kind,
  subject,
  day,
  evidence: 'seen',
  body,
  ...more,
});
/** A spar that flew 1 000 h privately, then 400 h of which 50 to 150 h towing, then 100 h of which no paper says the use. */
const book = (more: readonly object[] = []) => ({
  sparwright: 'record/1',
  day: '2024-01-01',
  entries: [
    entry('aircraft', 'ac', '2010-01-01', {
      registration: 'T',
      type: 'T',
      model: 'M',
      serial: '1',
      built: '2010-01-01',
    }),
    entry('part', 'sp', '2010-01-01', { part: 'spar', hand: 'left', part_number: 'P-1' }),
    entry('fitment', 'sp', '2010-01-01', { into: 'ac', place: 'left_spar' }, { order: 1 }),
    entry('reading', 'ac', '2020-01-01', { total_h: 1000, landings: 1500 }),
    entry('reading', 'ac', '2022-01-01', { total_h: 1400, landings: 2000 }),
    entry('reading', 'ac', '2024-01-01', { total_h: 1500, landings: 2200 }),
    entry('use', 'ac', '2010-01-01', { from: '2010-01-01', to: '2020-01-01', use: 'private' }),
    entry('use', 'ac', '2020-01-02', {
      from: '2020-01-02',
      to: '2022-01-01',
      split: [{ use: 'tow', hours_h: { low_h: 50, high_h: 150 } }],
      rest: 'private',
    }),
    ...more,
  ].map((e, i) => ({ ...e, id: `e${i + 1}` })),
});
const DAYS = ['2020-01-01', '2022-01-01', '2024-01-01'] as Day[];
const lifeOf = (input: object) =>
  record.lifeOf(record.modelOf(record.readRecord(input)), 'sp', { until: DAYS[2]!, cuts: DAYS });
const answer = { uses: RATIOS } as never;

describe('U14 along a life', () => {
  it('hours and equivalent hours on each day, jointly', () => {
    const e = equivalentLife(lifeOf(book()), answer, DAYS);
    expect(e.part).toBe('sp');
    expect(e.points.map((p) => p.flown_h)).toEqual([
      { low: 1000, high: 1000 },
      { low: 1400, high: 1400 },
      { low: 1500, high: 1500 },
    ]);
    expect(e.points[0]!.equivalent_h).toEqual({ low: 1000, high: 1000 });
    expect(e.points[1]!.equivalent_h).toEqual({ low: 1500, high: 1700 });
    // The last 100 h of no known use: at least patrol, at most towing or a use without loads.
    expect(e.points[2]!.equivalent_h).toEqual({ low: 1550, high: 2000 });
    expect(e.byUse.slice(0, 2)).toEqual([
      { use: 'private', flown_h: { low: 1250, high: 1450 }, ratio: 1, assumed: false },
      { use: 'tow', flown_h: { low: 50, high: 250 }, ratio: 3, assumed: false },
    ]);
  });
  it('hours by use add up to the hours in all, whatever the papers leave open', () => {
    const life = lifeOf(book());
    for (const day of DAYS) {
      const facts = life.at(day);
      const uses = Object.keys(facts).filter((f) => f.startsWith('hours.') && f !== 'hours.total');
      const rest = addForms(
        facts['hours.total']!,
        ...uses.map((u) => ({
          constant: -facts[u]!.constant,
          terms: facts[u]!.terms.map(([v, c]) => [v, -c] as const),
        })),
      );
      const { low, high } = linearExtremes(rest, life.region);
      expect(low.value).toBeCloseTo(0, 6);
      expect(high.value).toBeCloseTo(0, 6);
    }
  });
  it('a use without loads counts as the hardest one', () => {
    const e = equivalentLife(
      lifeOf(book([entry('use', 'ac', '2022-01-02', { from: '2022-01-02', use: 'drop' })])),
      answer,
      DAYS,
    );
    expect(e.byUse.find((u) => u.use === 'drop')).toEqual({
      use: 'drop',
      flown_h: { low: 100, high: 100 },
      ratio: 3,
      assumed: true,
    });
    expect(e.points[2]!.equivalent_h).toEqual({ low: 1800, high: 2000 });
  });
  it('takes in the same life under other readings', () => {
    const other = lifeOf(book([entry('use', 'ac', '2022-01-02', { from: '2022-01-02', use: 'drop' })]));
    const e = equivalentLife(
      lifeOf(book([entry('use', 'ac', '2022-01-02', { from: '2022-01-02', use: 'patrol' })])),
      answer,
      DAYS,
      [other],
    );
    expect(e.points[2]!.equivalent_h).toEqual({ low: 1550, high: 2000 });
  });
  it('the answer of a part is settled by its life: hours of no known use count once, its steps with them', () => {
    const loose: Row[] = [
      ['private', 1250, 1450],
      ['tow', 50, 250],
      ['patrol', 0, 100],
      ['drop', 0, 100],
    ];
    const whole = answerUsage({ ...SYNTHETIC_1, hours: hours(loose, [1400, 1600]) });
    const uses = RATIOS.map((r) => ({ ...whole.value.uses[0]!, ...r, safeLife_h: 1000 }));
    const sensitivity = [
      { tried: 'all alike', ratios: RATIOS.map(({ use }) => ({ use, ratio: 1 })) },
      { tried: 'not whole', ratios: RATIOS.map(({ use }) => ({ use, ratio: use === 'tow' ? null : 50 })) },
    ];
    const bent = { ...whole, value: { ...whole.value, uses, sensitivity } };
    const settled = answerOfLife(bent, lifeOf(book()), DAYS[2]!);
    expect(settled.value.equivalent).toMatchObject({
      flown_h: { low: 1500, high: 1500 },
      equivalent_h: { low: 1550, high: 2000 },
      across_h: { low: 1500, high: 2000 },
      used: { low: 1.55, high: 2 },
    });
    expect(settled.working.length).toBe(whole.working.length);
    expect(settled.working.at(-1)!.value).toEqual({ low: 1.55, high: 2 });
    expect(settled.working.filter((s) => s.symbol === 'He').map((s) => s.value)).toEqual([
      { low: 1550, high: 2000 },
      { low: 1500, high: 2000 },
    ]);
    const patrol = lifeOf(book([entry('use', 'ac', '2022-01-02', { from: '2022-01-02', use: 'patrol' })]));
    const dropped = book([entry('use', 'ac', '2022-01-02', { from: '2022-01-02', use: 'drop' })]);
    const drop = lifeOf(JSON.parse(JSON.stringify(dropped).replace('"total_h":1500', '"total_h":1520')));
    expect(answerOfLife(bent, patrol, DAYS[2]!).value.equivalent!.equivalent_h).toEqual({ low: 1550, high: 1750 });
    const both = answerOfLife(bent, patrol, DAYS[2]!, [drop]).value.equivalent!;
    expect([both.flown_h, both.equivalent_h]).toEqual([
      { low: 1500, high: 1520 },
      { low: 1550, high: 2060 },
    ]);
    const none = answerUsage(SYNTHETIC_1);
    expect(answerOfLife(none, lifeOf(book()), DAYS[2]!)).toBe(none);
  });
});

describe('U13 in the answer', () => {
  const second = {
    ...SYNTHETIC_1.uses[0]!,
    use: 'tow',
    flight_h: 0.75,
    loads: [0, 1].map(() => SYNTHETIC_1.uses[0]!.loads[0]!),
  };
  const input = {
    ...SYNTHETIC_1,
    uses: [...SYNTHETIC_1.uses, second],
    hours: hours(
      [
        ['private', 100, 200],
        ['tow', 50, 150],
      ],
      [250, 250],
    ),
  };
  it('hours are weighed by the ratios, and held against the safe life of the reference use', () => {
    const { value } = answerUsage(input);
    const tow = value.uses[1]!.ratio;
    expect(tow).toBeGreaterThan(1);
    const e = value.equivalent!;
    expect(e.equivalent_h.low).toBeCloseTo(200 + 50 * tow, 4);
    expect(e.equivalent_h.high).toBeCloseTo(100 + 150 * tow, 4);
    expect(e.used!.high).toBeCloseTo(e.equivalent_h.high / value.uses[0]!.safeLife_h!, 12);
    expect(e.across_h!.low).toBeLessThanOrEqual(e.equivalent_h.low);
    expect(e.across_h!.high).toBeGreaterThan(e.equivalent_h.high);
  });
  it('without stress: hours of the reference use, and no share of a life', () => {
    const place = { name: 'p', stress: { as: 'unknown', ground_share: -0.3, from: MADE_UP } };
    const { value } = answerUsage({ ...input, place });
    expect(value.equivalent!.used).toBe(null);
    expect(value.equivalent!.equivalent_h.high).toBeGreaterThan(250);
  });
});
