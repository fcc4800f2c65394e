import fc from 'fast-check';
import { addDays, type Day } from '../../../foundation/day.ts';
import { modelOf, type RecordModel, readRecord } from '../../../record/index.ts';
import { entry, rule } from '../../testing/rule.ts';

/** Random books of one aircraft with two spars, plain for the most part; and random rules for them. */
export const START = '2008-03-05' as Day;
export const TODAY = '2022-01-01' as Day;
export const LAST = 5000;
const day = (n: number): Day => addDays(START, n);

const flight = fc.record({
  after: fc.integer({ min: 1, max: 40 }),
  tenths: fc.integer({ min: 1, max: 60 }),
  landings: fc.integer({ min: 1, max: 9 }),
  use: fc.constantFrom('private', 'tow', 'hire', 'spray'),
});
const chapter = fc.record({
  kind: fc.constantFrom('rows', 'rows', 'rows', 'span', 'gap', 'gap', 'quiet'),
  days: fc.integer({ min: 20, max: 420 }),
  hours: fc.integer({ min: 2, max: 160 }),
  perHour: fc.integer({ min: 1, max: 5 }),
  use: fc.constantFrom('private', 'tow'),
  flights: fc.array(flight, { minLength: 1, maxLength: 9 }),
  slip: fc.integer({ min: -2, max: 2 }),
  more: fc.integer({ min: 0, max: 3 }),
  look: fc.constantFrom(null, null, 'inspection', 'done', 'done_other'),
});
const ODD = ['opening', 'event', 'split', 'moved', 'no landings', 'falls', 'loose gap', 'no use', 'open row'] as const;
export const book = fc.record({
  chapters: fc.array(chapter, { minLength: 2, maxLength: 11 }),
  tail: fc.array(flight, { maxLength: 6 }),
  built: fc.boolean(),
  wings: fc.boolean(),
  odd: fc.oneof({ weight: 8, arbitrary: fc.constant(null) }, { weight: 1, arbitrary: fc.constantFrom(...ODD) }),
});
export type Book = typeof book extends fc.Arbitrary<infer T> ? T : never;

export function recordOf(b: Book): RecordModel {
  const out: object[] = [
    entry('aircraft', 'ac', START, { registration: 'N1', type: 'T', model: 'M', serial: '0100', built: START }),
  ];
  for (const hand of ['left', 'right'] as const) {
    const built = b.built || hand === 'left' ? { built: START } : {};
    out.push(entry('part', `sp-${hand}`, START, { part: 'spar', hand, part_number: `P-${hand}`, ...built }));
    if (b.wings) out.push(entry('part', `w-${hand}`, START, { part: 'wing', hand }));
    if (b.wings) out.push(entry('fitment', `w-${hand}`, START, { into: 'ac', place: `${hand}_wing` }, { order: 1 }));
    const into = b.wings ? `w-${hand}` : 'ac';
    out.push(entry('fitment', `sp-${hand}`, START, { into, place: `${hand}_spar` }, { order: 2 }));
  }
  let [d, tenths, n, read_s] = [0, 0, 0, 0];
  const row = (on: number, f: Book['tail'][number]) =>
    out.push(
      entry('flights', 'ac', day(on), { hours_h: f.tenths / 10, landings: f.landings, use: f.use }, { order: 3 }),
    );
  for (const [i, c] of b.chapters.entries()) {
    const from = d;
    if (c.kind === 'rows') {
      let [sum, count] = [0, 0];
      for (const f of c.flights) {
        d += f.after;
        sum += f.tenths;
        count += f.landings;
        row(d, f);
      }
      d += 1;
      tenths += sum;
      n += count + c.more;
    } else {
      d += c.days;
      if (c.kind !== 'quiet') {
        tenths += c.hours * 10;
        n += c.hours * c.perHour;
      }
    }
    if (d >= LAST) break;
    const loose = b.odd === 'loose gap' && c.kind === 'gap' ? 3 : 0;
    const stated = { from: day(from + 1 + loose), to: day(d) };
    if (c.kind === 'gap') out.push(entry('gap', 'ac', stated.from, { ...stated, because: 'lost' }));
    if (c.kind === 'span' && b.odd !== 'no use')
      out.push(entry('use', 'ac', stated.from, { ...stated, use: c.use }, { order: 1 }));
    // A slip of up to 0.02 h between rows and totals is none.
    if (c.kind !== 'quiet') read_s = Math.max(read_s, tenths * 360 + (c.kind === 'rows' ? c.slip * 36 : 0));
    const total = read_s / 3600;
    const bare = b.odd === 'no landings' && i === 1;
    out.push(entry('reading', 'ac', day(d), { total_h: total, ...(bare ? {} : { landings: n }) }, { order: 9 }));
    const by = { finding: 'none', total_h: total };
    if (c.look === 'inspection')
      out.push(entry('inspection', 'ac', day(d), { wording: 'annual', total_h: total }, { order: 9 }));
    if (c.look === 'done')
      out.push(
        entry('accomplished', 'sp-left', day(d), { directive: 'T-1', issue: 1, action: 'look', ...by }, { order: 9 }),
      );
    if (c.look === 'done_other')
      out.push(
        entry('accomplished', 'sp-right', day(d), { directive: 'T-0', issue: 2, action: 'old', ...by }, { order: 9 }),
      );
  }
  for (const f of b.tail) {
    d += f.after;
    if (d >= LAST) break;
    row(d, f);
  }
  odd(b.odd, out, d);
  const entries = out.map((e, i) => ({ ...e, id: `e${i + 1}` }));
  return modelOf(readRecord({ sparwright: 'record/1', day: TODAY, entries }));
}

/** Records just outside what is plain. */
function odd(what: Book['odd'], out: object[], d: number): void {
  const on = day(Math.max(2, Math.min(d, LAST) - 2));
  if (what === 'opening')
    out.push(entry('opening', 'sp-left', START, { basis: 'donor_record', hours_h: 100, landings: 80 }));
  if (what === 'event') out.push(entry('event', 'ac', on, { event: 'hard_landing' }));
  if (what === 'split')
    out.push(entry('use', 'ac', START, { from: START, split: [{ use: 'tow', hours_h: 1 }], rest: 'private' }));
  if (what === 'moved') out.push(entry('removal', 'sp-right', on, { to: 'shelf' }));
  if (what === 'falls') out.push(entry('reading', 'ac', on, { total_h: 0.5, landings: 1 }, { order: 8 }));
  if (what === 'open row') out.push(entry('flights', 'ac', on, { hours_h: 1 }, { order: 4 }));
}

const FORMULAS = [
  'landings.total + 2.0 * landings.tow',
  'hours.total + 1.5 * hours.tow - 0.25 * hours.hire',
  '(landings.tow * 3.0 + landings.private) / 2.0 + hours.survey',
  'hours.tow + 0.1 * landings.tow',
  'hours.total > 500.0 ? hours.total - 200.0 : hours.total / 2.0',
  'max(0.0, hours.tow - 40.0) + age.days / 100.0',
  'landings.total / 4.0 + kit.winglet.hours',
];
const is = fc.constantFrom('at', 'more than');
const since = fc.oneof(
  fc.constantFrom('new', 'effective', 'part_fitted', { event: 'hard_landing' }),
  fc.constant({ last_look: [{ directive: 'T-0', action: 'old' }] }),
  fc.integer({ min: 0, max: LAST }).map((n) => ({ effective_of: { directive: 'T-0', on: day(n) } })),
);
const simple = fc.oneof(
  fc.record({ counted: fc.integer({ min: 0, max: 3000 }), is, since }),
  fc.record({ counted: fc.integer({ min: 0, max: 3000 }), is }),
  fc.record({
    hours_h: fc.integer({ min: 0, max: 900 }),
    is,
    of: fc.constantFrom('part', 'aircraft'),
    since,
  }),
  fc.record({ landings: fc.integer({ min: 0, max: 3000 }), is, of: fc.constantFrom('part', 'aircraft'), since }),
  fc.record({ days: fc.integer({ min: 0, max: 5500 }), is, since }),
  fc.record({ months: fc.integer({ min: 0, max: 180 }), is, since }),
  fc.record({ on: fc.integer({ min: 3000, max: 5600 }).map(day), is }),
);
const limit = fc.oneof(
  { weight: 3, arbitrary: simple },
  {
    weight: 2,
    arbitrary: fc
      .tuple(fc.constantFrom('first_of', 'later_of'), fc.array(simple, { minLength: 2, maxLength: 3 }))
      .map(([kind, of]) => ({ [kind]: of })),
  },
  {
    weight: 1,
    arbitrary: fc
      .tuple(simple, simple, fc.integer({ min: 50, max: 800 }))
      .map(([a, b, h]) => ({ when: `hours.total > ${h}.0`, limit: a, otherwise: b })),
  },
);
const group = fc.oneof(
  { weight: 5, arbitrary: fc.constant({}) },
  {
    weight: 3,
    arbitrary: fc.constantFrom(
      { models: [{ model: 'M' }] },
      { models: [{ model: 'M', serials: [{ from: '0050', to: '0090' }] }] },
      { part_numbers: ['P-left'] },
      { uses: ['tow'] },
      { uses: ['spray', 'survey'] },
      { built_before: '2009-01-01' },
      { without_kits: ['winglet'] },
    ),
  },
);
export const ruleOf = fc
  .record({
    looks_at: fc.constantFrom('spar', 'spar', 'aircraft'),
    expression: fc.constantFrom(...FORMULAS),
    unit: fc.constantFrom('h', 'landings', 'count'),
    first: limit,
    repeat: fc.option(limit),
    credit: fc.boolean(),
    missing_papers: fc.constantFrom('bounds', 'bounds', 'bounds', 'act_now', { assume_use: 'tow' }),
    affects: group,
    effective: fc.integer({ min: 200, max: 5300 }).map(day),
    number: fc.constantFrom('T-1', 'T-2'),
    ended_by: fc.option(fc.constant([{ part_number: 'P-right' }]), { freq: 9 }),
  })
  .map(({ expression, unit, effective, number, affects, repeat, credit, ended_by, ...a }) =>
    rule(
      {
        ...a,
        ...(repeat ? { repeat } : {}),
        ...(credit ? { credit: [{ directive: 'T-0', action: 'old' }] } : {}),
        ...(ended_by ? { ended_by } : {}),
        counts: { expression, called: 'figure', unit },
      } as never,
      { number, issued: START, effective, affects } as never,
    ),
  );
