import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { addDays, type Day } from '../../foundation/day.ts';
import { modelOf, type RecordModel, readRecord, sumsOf } from '../../record/index.ts';
import { assessAll, type DirectiveDocument, lineOf, readDirective, type StandingLine } from '../index.ts';
import { entry, rule } from '../testing/rule.ts';
import { swiftLines, swiftRules } from './index.ts';
import { book, LAST, recordOf, ruleOf, START, TODAY } from './testing/books.ts';
import { differs } from './testing/differs.ts';

const keyOf = (l: StandingLine) => `${l.part}|${l.directive}|${l.action}`;
const refOf = (m: RecordModel, rules: readonly DirectiveDocument[]) =>
  new Map(assessAll(rules, m, TODAY).map((a) => [keyOf(lineOf(a)), lineOf(a)]));

/** `assessAll` goes the whole way, through the solver: what the sums give is held against it line by line. */
describe('sums give what the whole way gives', () => {
  it('on random records under random rules', { timeout: 120_000 }, () => {
    const seen = { books: 0, plain: 0, fast: 0, open: 0, whole: 0 };
    fc.assert(
      fc.property(book, fc.array(ruleOf, { minLength: 2, maxLength: 4 }), (b, inputs) => {
        const rules = inputs.map((x, i) => readDirective({ ...x, number: i === 0 ? x.number : `X-${i}` }));
        const m = recordOf(b);
        const { sums } = sumsOf(m.entries, 'ac', m.policy);
        seen.books++;
        if (!sums) return;
        seen.plain++;
        const found = swiftLines(swiftRules(rules, TODAY), sums, m.policy, TODAY);
        const ref = refOf(m, rules);
        expect(found.lines.length + found.whole.length).toBe(ref.size);
        for (const line of found.lines) {
          const whole = ref.get(keyOf(line))!;
          expect(differs(line, whole)).toBeNull();
          if (whole.treatAs.left?.value !== whole.couldBecome.left?.value) seen.open++;
        }
        seen.fast += found.lines.length;
        seen.whole += found.whole.length;
      }),
      { numRuns: 300, seed: 7 },
    );
    expect(seen.plain).toBeGreaterThan(0.6 * seen.books);
    expect(seen.fast).toBeGreaterThan(600);
    expect(seen.open).toBeGreaterThan(30);
    expect(seen.whole).toBeLessThan(0.5 * seen.fast);
  });
  it('does not answer for a day before the newest entry', () => {
    const m = recordOf(fc.sample(book, { seed: 3, numRuns: 40 }).find((b) => b.odd === null)!);
    const { sums } = sumsOf(m.entries, 'ac', m.policy);
    const past = addDays(START, 5);
    const rules = swiftRules([readDirective(rule({ first: { on: '2021-01-01', is: 'at' } }))], past);
    const found = swiftLines(rules, sums!, m.policy, past);
    expect(found.lines).toEqual([]);
    expect(found.whole.map((w) => w.because)).toEqual(['an entry after the day', 'an entry after the day']);
  });
});

/** One gap of 200 h and 400 landings after a year that rows list: 100 h and 150 landings, 40 h and 90 of them towing. */
const small = (more: readonly object[] = []): RecordModel => {
  const day = (n: number): Day => addDays(START, n);
  const entries = [
    entry('aircraft', 'ac', START, { registration: 'N1', type: 'T', model: 'M', serial: '0100', built: START }),
    entry('part', 'sp', START, { part: 'spar', hand: 'left', part_number: 'P-1', built: START }),
    entry('fitment', 'sp', START, { into: 'ac', place: 'left_spar' }, { order: 1 }),
    entry('flights', 'ac', day(100), { hours_h: 60, landings: 60, use: 'private' }),
    entry('flights', 'ac', day(200), { hours_h: 40, landings: 90, use: 'tow' }),
    entry('reading', 'ac', day(365), { total_h: 100, landings: 150 }),
    entry('gap', 'ac', day(366), { from: day(366), to: day(730), because: 'lost' }),
    entry('reading', 'ac', day(730), { total_h: 300, landings: 550 }),
    entry('flights', 'ac', day(LAST - 30), { hours_h: 60, landings: 60, use: 'private' }),
    ...more,
  ];
  return modelOf(
    readRecord({ sparwright: 'record/1', day: TODAY, entries: entries.map((e, i) => ({ ...e, id: `e${i + 1}` })) }),
  );
};
const plainOf = (m: RecordModel) => sumsOf(m.entries, 'ac', m.policy);

it('a gap by hand: all its landings towing, or none', () => {
  const counts = { expression: 'landings.total + 2.0 * landings.tow', called: 'figure', unit: 'landings' } as const;
  const m = small();
  const rules = swiftRules([readDirective(rule({ counts, first: { counted: 1500, is: 'at' } }))], TODAY);
  const [line] = swiftLines(rules, plainOf(m).sums!, m.policy, TODAY).lines;
  // 610 landings, 90 to 490 of them towing.
  expect(line!.treatAs.left!.value).toBeCloseTo(1500 - (610 + 2 * 490), 9);
  expect(line!.couldBecome.left!.value).toBeCloseTo(1500 - (610 + 2 * 90), 9);
  expect(line!.hangsOn).toBe(`Logbook N1, ${addDays(START, 366)} to ${addDays(START, 730)}`);
});

it('recent flying in a gap that its first day cuts is open: the mix is what the whole way takes', () => {
  const on = (n: number): Day => addDays(START, n);
  const m = small([
    entry('reading', 'ac', on(4199), { total_h: 300, landings: 550 }),
    entry('gap', 'ac', on(4200), { from: on(4200), to: on(4400), because: 'lost' }),
    entry('reading', 'ac', on(4400), { total_h: 340, landings: 620 }),
    entry('flights', 'ac', on(4500), { hours_h: 30, landings: 60, use: 'tow' }),
  ]);
  const counts = { expression: 'landings.total + 2.0 * landings.tow', called: 'figure', unit: 'landings' } as const;
  const rules = [readDirective(rule({ counts, first: { counted: 9000, is: 'at' } }))];
  const { lines } = swiftLines(swiftRules(rules, TODAY), plainOf(m).sums!, m.policy, TODAY);
  expect(lines).toHaveLength(1);
  expect(differs(lines[0]!, refOf(m, rules).get(keyOf(lines[0]!))!)).toBeNull();
});

describe('records just outside the plain ones go the whole way', () => {
  const on = (n: number): Day => addDays(START, n);
  it.each([
    ['as it is', [], null],
    ['an opening', [entry('opening', 'sp', START, { basis: 'new', hours_h: 0, landings: 0 })], /opening/],
    ['an event', [entry('event', 'ac', on(800), { event: 'hard_landing' })], /event/],
    ['a kit', [entry('kit', 'ac', on(800), { kit: 'winglet', action: 'fitted' })], /kit/],
    ['a removal', [entry('removal', 'sp', on(800), {})], /removal/],
    ['a reading without a total', [entry('reading', 'ac', on(800), { landings: 560 })], /without a total/],
    ['a total in the gap', [entry('reading', 'ac', on(500), { total_h: 180 })], /without landings/],
    ['a total that falls', [entry('reading', 'ac', on(800), { total_h: 299, landings: 550 })], /falls/],
    ['a row in the gap', [entry('flights', 'ac', on(500), { hours_h: 1, landings: 1, use: 'tow' })], /add up/],
    ['a row of no use', [entry('flights', 'ac', on(900), { hours_h: 1, landings: 1 })], /row that is open/],
    ['a second gap at the end', [entry('gap', 'ac', on(4990), { from: on(4990), to: on(4999), because: 'x' })], /end/],
    [
      'a gap over half a stretch',
      [
        entry('reading', 'ac', on(1000), { total_h: 320, landings: 580 }),
        entry('gap', 'ac', on(800), { from: on(800), to: on(900), because: 'x' }),
      ],
      /begins or ends between/,
    ],
    ['a stretch of no use', [entry('reading', 'ac', on(1000), { total_h: 320, landings: 580 })], /stated use/],
    [
      'a share of uses',
      [entry('use', 'ac', START, { from: START, split: [{ use: 'tow', hours_h: 1 }], rest: 'private' })],
      /share/,
    ],
    [
      'a part fitted later',
      [
        entry('part', 'sp2', on(9), { part: 'spar', hand: 'right' }),
        entry('fitment', 'sp2', on(9), { into: 'ac', place: 'right_spar' }),
      ],
      /fitted later/,
    ],
    ['many landings', [entry('reading', 'ac', on(1000), { total_h: 301, landings: 750 })], /landings/],
  ])('%s', (_name, more, why) => {
    const found = plainOf(small(more));
    if (why === null) expect(found.why).toBeNull();
    else expect(found.why).toMatch(why);
  });
});
