import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { addDays, type Day, daysBetween } from '../foundation/day.ts';
import { randomSource } from '../foundation/random.ts';
import { isRefusal } from '../foundation/refusal.ts';
import { evaluateForm, type Region, sampleRegion } from '../foundation/region/index.ts';
import { lifeOf, modelOf, type RecordModel, readRecord } from '../record/index.ts';
import { type Assessment, assess, cutsOf, type DirectiveInput, readDirective, STANDINGS } from './index.ts';
import { entry, flownAs, rule, smallRecord } from './testing/rule.ts';

/** Random books of one aircraft with one spar: readings a few months apart, some use on paper, perhaps a gap. */
const START = '2015-01-01' as Day;
const TODAY = '2022-01-01' as Day;
const day = (n: number): Day => addDays(START, n);
const book = fc.record({
  steps: fc.array(
    fc.record({
      days: fc.integer({ min: 60, max: 500 }),
      perDay_h: fc.integer({ min: 0, max: 4 }),
      landings: fc.integer({ min: 0, max: 4 }),
    }),
    { minLength: 1, maxLength: 4 },
  ),
  use: fc.constantFrom('tow', 'private', null),
  until: fc.integer({ min: 100, max: 2500 }),
  gap: fc.record({ from: fc.integer({ min: 1, max: 1500 }), days: fc.integer({ min: 1, max: 500 }) }),
});
type Book = typeof book extends fc.Arbitrary<infer T> ? T : never;

function recordOf(b: Book, gap: Book['gap'] | null = b.gap): RecordModel {
  const out = [
    entry('aircraft', 'ac', START, { registration: 'T', type: 'T', model: 'M', serial: '0100', built: START }),
    entry('part', 'sp', START, { part: 'spar', hand: 'left', part_number: 'P-1', built: START }),
    entry('fitment', 'sp', START, { into: 'ac', place: 'left_spar' }, { order: 1 }),
  ];
  let [d, h, n] = [0, 0, 0];
  for (const s of b.steps) {
    d += s.days;
    h += Math.round((s.days * s.perDay_h) / 8);
    n += s.landings * Math.round(s.days / 4);
    out.push(entry('reading', 'ac', day(d), { total_h: h, landings: n }, { order: 9 }));
  }
  if (b.use) out.push(entry('use', 'ac', START, { from: START, to: day(b.until), use: b.use }));
  if (gap)
    out.push(entry('gap', 'ac', day(gap.from), { from: day(gap.from), to: day(gap.from + gap.days), because: 'lost' }));
  return modelOf(readRecord({ sparwright: 'record/1', day: TODAY, uses: ['private', 'tow'], entries: out }));
}

/** Limits as plain figures: what is left of each in its own unit, from facts now and on the effective date. */
type Leaf = { limit: object; left: (now: F, then: F, effective: Day) => number };
type F = (name: string) => number;
const counted = (n: number): Leaf => ({
  limit: { counted: n, is: 'at' },
  left: (now) => n - (now('hours.total') + 2 * now('hours.tow')),
});
const hours = (n: number): Leaf => ({
  limit: { hours_h: n, is: 'at', of: 'part', since: 'new' },
  left: (now) => n - now('hours.total'),
});
const after = (n: number): Leaf => ({
  limit: { hours_h: n, is: 'at', of: 'part', since: 'effective' },
  left: (now, then) => n - (now('hours.total') - then('hours.total')),
});
const landings = (n: number): Leaf => ({
  limit: { landings: n, is: 'at', of: 'part', since: 'effective' },
  left: (now, then) => n - (now('landings.total') - then('landings.total')),
});
const days = (n: number): Leaf => ({
  limit: { days: n, is: 'at', since: 'effective' },
  left: (_now, _then, effective) => daysBetween(TODAY, addDays(effective, n)),
});
const leaf = fc.oneof(
  fc.integer({ min: 0, max: 2500 }).map(counted),
  fc.integer({ min: 0, max: 1200 }).map(hours),
  fc.integer({ min: 0, max: 600 }).map(after),
  fc.integer({ min: 0, max: 1500 }).map(landings),
  fc.integer({ min: 0, max: 2600 }).map(days),
);
const limit = fc.record({
  kind: fc.constantFrom('first_of', 'later_of'),
  of: fc.array(leaf, { minLength: 1, maxLength: 3 }),
});
type Limit = typeof limit extends fc.Arbitrary<infer T> ? T : never;
const effectiveDay = fc.integer({ min: 0, max: 2800 }).map(day);

const ruleOf = (l: Limit, effective: Day): DirectiveInput => {
  const first = l.of.length === 1 ? l.of[0]!.limit : { [l.kind]: l.of.map((x) => x.limit) };
  return rule(
    {
      counts: { expression: 'hours.total + 2.0 * hours.tow', called: 'weighted hours', unit: 'h' },
      first: first as never,
    },
    { issued: START, effective },
  );
};
function assessed(m: RecordModel, input: DirectiveInput) {
  const d = readDirective(input);
  const life = lifeOf(m, 'sp', { until: TODAY, cuts: cutsOf(d, m, 'sp') });
  return { life, d, a: assess(d, 'look', life, m, { day: TODAY }) };
}
const rank = (s: (typeof STANDINGS)[number]) => STANDINGS.indexOf(s);
/** A random possible history; a draw that the sampler loses to rounding at an edge is drawn again, or not counted. */
function sampled(region: Region, seed: number): number[] {
  for (let n = 0; n < 4; n++)
    try {
      return sampleRegion(region, randomSource(seed, n));
    } catch (e) {
      if (!isRefusal(e)) throw e;
    }
  fc.pre(false);
  return [];
}
/** Past, at or before its limit, told by plain arithmetic; a figure within a second of the limit is none of these. */
const plainly = (l: Limit, lefts: readonly number[]): 'past' | 'before' | 'near' => {
  const left = l.kind === 'first_of' ? Math.min(...lefts) : Math.max(...lefts);
  return Math.abs(left) < 1e-3 ? 'near' : left < 0 ? 'past' : 'before';
};

/** A seed is fixed where the test also counts that its interesting side was reached. */
describe('laws on random records', () => {
  it('the standing of sampled histories lies between worst and best', () => {
    let [past, before, open] = [0, 0, 0];
    fc.assert(
      fc.property(book, limit, effectiveDay, fc.integer(), (b, l, effective, seed) => {
        fc.pre(effective <= TODAY);
        const { life, a } = assessed(recordOf(b), ruleOf(l, effective));
        expect(a.notComputed).toBeNull();
        if (a.standing.worst !== a.standing.best) open++;
        for (let i = 0; i < 3; i++) {
          const h = sampled(life.region, seed + i);
          const facts = (at: Day): F => {
            const forms = life.at(at);
            return (name) => (forms[name] ? evaluateForm(forms[name]!, h) : 0);
          };
          const lefts = l.of.map((x) => x.left(facts(TODAY), facts(effective), effective));
          const stands = plainly(l, lefts);
          if (stands === 'past') {
            past++;
            expect(a.standing.worst).toBe('overdue');
          }
          if (stands === 'before') {
            before++;
            expect(rank(a.standing.best)).toBeLessThan(rank('due'));
          }
          if (l.of.length === 1) {
            expect(lefts[0]).toBeGreaterThanOrEqual(a.treatAs.left!.value - 0.06);
            expect(lefts[0]).toBeLessThanOrEqual(a.couldBecome.left!.value + 0.06);
          }
        }
        expect(rank(a.standing.worst)).toBeGreaterThanOrEqual(rank(a.standing.best));
      }),
      { numRuns: 120, seed: 11 },
    );
    expect(Math.min(past, before, open)).toBeGreaterThan(5);
  });

  it('a later effective date never makes a part due earlier', () => {
    fc.assert(
      fc.property(book, limit, effectiveDay, fc.integer({ min: 1, max: 900 }), (b, l, effective, later) => {
        const m = recordOf(b);
        const [soon, late] = [effective, addDays(effective, later)].map((e) => assessed(m, ruleOf(l, e)).a) as [
          Assessment,
          Assessment,
        ];
        expect(rank(late.standing.worst)).toBeLessThanOrEqual(rank(soon.standing.worst));
        expect(rank(late.standing.best)).toBeLessThanOrEqual(rank(soon.standing.best));
        const [x, y] = [soon.treatAs.dueAt, late.treatAs.dueAt];
        if (l.of.length === 1 && late.day >= addDays(effective, later)) {
          if (x.day && y.day) expect(y.day >= x.day).toBe(true);
          if (x.total_s !== null && y.total_s !== null) expect(y.total_s).toBeGreaterThanOrEqual(x.total_s - 300);
          expect(late.treatAs.left!.value).toBeGreaterThanOrEqual(soon.treatAs.left!.value - 0.06);
        }
      }),
      { numRuns: 120 },
    );
  });

  it('widening a gap never softens treat-as', () => {
    const wider = fc.record({ before: fc.integer({ min: 0, max: 200 }), after: fc.integer({ min: 0, max: 400 }) });
    fc.assert(
      fc.property(book, limit, effectiveDay, wider, (b, l, effective, w) => {
        fc.pre(effective <= TODAY);
        const grown = {
          from: Math.max(1, b.gap.from - w.before),
          days: b.gap.days + w.after + Math.min(w.before, b.gap.from - 1),
        };
        const r = ruleOf(l, effective);
        const [none, narrow, wide] = [null, b.gap, grown].map((g) => assessed(recordOf(b, g), r).a);
        const at = [none!, narrow!, wide!].map((a) => rank(a.standing.worst));
        expect(at[1]).toBeGreaterThanOrEqual(at[0]!);
        expect(at[2]).toBeGreaterThanOrEqual(at[1]!);
        if (l.of.length === 1)
          expect(wide!.treatAs.left!.value).toBeLessThanOrEqual(narrow!.treatAs.left!.value + 0.06);
      }),
      { numRuns: 120 },
    );
  });

  it('losing the paper of a use never softens treat-as', () => {
    let harder = 0;
    fc.assert(
      fc.property(book, fc.constantFrom('tow', 'private'), limit, effectiveDay, (b, use, l, effective) => {
        fc.pre(effective <= TODAY);
        const r = ruleOf(l, effective);
        const known = assessed(recordOf({ ...b, use, until: 2600 }, null), r).a;
        const lost = assessed(recordOf({ ...b, use: null }, null), r).a;
        if (rank(lost.standing.worst) > rank(known.standing.worst)) harder++;
        expect(rank(lost.standing.worst)).toBeGreaterThanOrEqual(rank(known.standing.worst));
      }),
      { numRuns: 160, seed: 12 },
    );
    expect(harder).toBeGreaterThan(0);
  });
  it('the same, where the known flying ahead is the steepest: soon stays soon', () => {
    const d = ruleOf({ kind: 'first_of', of: [counted(4300)] }, '2020-01-01' as Day);
    const of = (more: object[]) => {
      const m = modelOf({ ...readRecord(smallRecord(more)), uses: ['private', 'tow'] });
      return assessed(m, d).a;
    };
    const [known, lost] = [of([flownAs('tow')]), of([])];
    expect(known.treatAs.left!.value).toBeCloseTo(100, 3);
    expect(known.standing.worst).toBe('soon due');
    expect(lost.treatAs.left!.value).toBeCloseTo(100, 3);
    expect(lost.standing.worst).toBe('soon due');
  });
});
