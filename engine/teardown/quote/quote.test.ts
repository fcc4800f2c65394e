import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { TeardownInput } from '../document.ts';
import type { Plan, Schedule } from '../model.ts';
import { smallJob, smallMap, t } from '../passes/testing/small-wing.ts';
import { planOf } from '../plan/index.ts';
import { quoted } from './quote.ts';
import { shoppingOf } from './shopping.ts';
import { smallFloor, smallTerms } from './testing/small-floor.ts';

const job = (change: Partial<TeardownInput> = {}) => smallJob({ floor: smallFloor(), quote: smallTerms, ...change });
function ask(change: Partial<TeardownInput> = {}, schedule: Schedule | null = null, plan?: Plan) {
  const document = job(change);
  const { floor, quote } = document;
  const of = plan ?? planOf(document);
  return quoted({ ...document, floor: floor!, quote: quote! }, of, schedule, shoppingOf(document, of));
}
const scheduled = (put: string, end: string): Schedule => ({
  from: '2026-12-01' as Schedule['from'],
  operations: [
    {
      id: 'put:spar',
      job: 'small job',
      start_min: 0,
      end_min: 60,
      startDay: put as Schedule['from'],
      endDay: put as Schedule['from'],
      crew: ['A'],
      jig: null,
      critical: true,
    },
  ],
  ends: [{ job: 'small job', day: end as Schedule['from'], end_min: 0 }],
  end_min: 0,
  bound_min: 0,
  chain: [],
  finish: { p50: end as Schedule['from'], p80: '2026-12-24' as Schedule['from'], seed: 1, runs: 100 },
  jigDays: [{ jig: 'jig-1', from: '2026-12-05' as Schedule['from'], to: '2026-12-08' as Schedule['from'], days: 4 }],
  findings: [],
});

describe('a quote', () => {
  it('adds up: lines to the base, base with findings to the range, each hour at its price', () => {
    const { quote } = ask();
    const sum = (end: 'low' | 'high') => quote.base.reduce((s, l) => s + l.cents[end], 0);
    expect(quote.baseTotal).toEqual({ low: sum('low'), high: sum('high') });
    expect(quote.range).toEqual({ low: quote.baseTotal.low, high: quote.baseTotal.high + quote.contingency.p80 });
    for (const l of quote.base) {
      for (const end of ['low', 'high'] as const) {
        expect(Number.isInteger(l.cents[end])).toBe(true);
        if (l.hours) expect(l.cents[end]).toBe(Math.round(l.hours[end] * 6000));
      }
    }
    expect(quote.validUntil).toBe('2026-12-31');
  });
  it('times that are fixed give hours that are fixed: those of the plan by hand', () => {
    // gates brought by the map, so that none is assumed; no look, no spread, no shared cause
    const map = {
      ...smallMap(),
      looks: [],
      gates: [
        {
          id: 'in',
          name: 'in',
          before: 'prepare' as const,
          who: 'shop' as const,
          minutes: t(30),
          from: smallMap().from,
        },
      ],
    };
    const plan = planOf(job({ map }));
    const own = plan.operations.filter((o) => !o.unattended && o.minutes.low_min === o.minutes.high_min);
    const spread = plan.operations.filter((o) => o.minutes.low_min !== o.minutes.high_min).map((o) => o.id);
    expect(spread).toEqual(['edge_check:spar']);
    const { quote } = ask({ map, chance: { seed: 1, runs: 100, common: 0 } }, null, {
      ...plan,
      operations: own,
      setups: { flips: 0, toolChanges: 0, minutes: 0 },
    });
    const minutes = own.reduce((s, o) => s + o.minutes.likely_min * o.persons, 0);
    expect(quote.hours.low).toBeCloseTo(minutes / 60, 9);
    expect(quote.hours.high).toBeCloseTo(minutes / 60, 9);
    expect(quote.base.find((l) => l.name === 'Receiving, survey and other gates')?.cents).toEqual({
      low: 3000,
      high: 3000,
    });
  });
  it('recorded minutes take the place of the estimate', () => {
    const recorded: TeardownInput['recorded'] = [
      { what: 'done', operation: 'gate:receiving', on: '2026-12-01', by: 'A', minutes: 600 },
    ];
    const gates = (change: Partial<TeardownInput>) =>
      ask(change).quote.base.find((l) => l.name === 'Receiving, survey and other gates')!.hours!;
    expect(gates({ recorded }).low - gates({}).low).toBeGreaterThan(7);
  });
  it('what is only charged if found: goods, hours by three points, with its chance', () => {
    const { quote } = ask();
    // 60, 120, 240 min at 100 cents a minute; mean 130 min is 13 000 of 20 000, so 7 000 goods
    expect(quote.ifFound).toEqual([
      {
        name: 'the tank bay',
        hours: { low: 1, high: 4 },
        cents: { low: 13_000, high: 31_000 },
        because: 'If found',
        chance: 0.25,
      },
    ]);
    expect(quote.contingency.p50).toBe(0);
    expect(quote.contingency.p80).toBeGreaterThan(13_000);
  });
  it('a finding that was made is no longer charged twice', () => {
    const ids = planOf(job()).operations.map((o) => o.id);
    const before = ids.slice(0, ids.indexOf('off:tank') + 1).filter((id) => !id.startsWith('look:'));
    const [on, by] = ['2026-12-01', 'A'];
    const recorded: TeardownInput['recorded'] = [
      ...before.map((operation) => ({ what: 'done' as const, operation, on, by })),
      { what: 'found', look: 'bay', finding: 'nothing', on, by },
    ];
    expect(ask({ recorded }).quote.ifFound).toEqual([]);
  });
  it('says when to call: never, at the high end, always', () => {
    const { range } = ask().quote;
    const passes = (stop_and_call_cents: number) => ask({ quote: { ...smallTerms, stop_and_call_cents } }).quote.passes;
    expect([passes(range.high), passes(range.high - 1), passes(range.low), passes(range.low - 1)]).toEqual([
      'never',
      'at the high end',
      'at the high end',
      'always',
    ]);
  });
  it('a part that outruns the work moves the days and asks for storage', () => {
    const { quote } = ask({}, scheduled('2026-12-21', '2026-12-22'));
    // needed on day 20; comes after 10 to 60 days
    expect(quote.outrun).toEqual({ part: 'spar', lead_days: { low: 10, high: 60 }, waits_days: { low: 0, high: 40 } });
    expect(quote.storage?.cents).toEqual({ low: 0, high: 4000 });
    expect(quote.finish).toEqual({ early: '2026-12-22', late: '2027-02-02' });
    expect(quote.range.high).toBe(quote.baseTotal.high + 4000 + quote.contingency.p80);
    expect(quote.jigDays.low).toBe(4);
    expect(ask({}, scheduled('2027-02-01', '2027-02-03')).quote.outrun).toBeNull();
  });
  it('names what has no price, who else works on it, and whose sums go through', () => {
    const { quote } = ask({
      quote: {
        ...smallTerms,
        freight_cents: { low: 100, high: 900 },
        further: [{ name: 'crate', low_cents: 5, high_cents: 7 }],
        excluded: ['rain'],
      },
    });
    expect(quote.excluded).toEqual(['rain', expect.stringContaining('MS20470AD5-6')]);
    expect(quote.installer).toEqual(['Check flight']);
    expect(quote.base.find((l) => l.name === 'Freight')?.cents).toEqual({ low: 100, high: 900 });
    expect(quote.base.find((l) => l.name === 'crate')?.cents).toEqual({ low: 5, high: 7 });
  });
  it('counts the pieces of the shopping list, and says how many of them have no price', () => {
    const because = (floor: TeardownInput['floor']) => {
      const document = job({ floor });
      const lines = shoppingOf(document, planOf(document)).lines.filter((l) => /rivet|bolt|screw|pin/.test(l.kind));
      const pieces = (list: typeof lines) => list.reduce((s, l) => s + l.count + l.spares, 0);
      const said = ask({ floor }).quote.base.find((l) => l.name === 'Fasteners')?.because;
      return { said, all: pieces(lines), bare: pieces(lines.filter((l) => l.cents === null)) };
    };
    const one = because(smallFloor());
    expect([one.bare, one.said]).toEqual([1, `${one.all - 1} of ${one.all} pieces, spares with them; 1 has no price`]);
    const codes = [...new Set(smallMap().joins.map((j) => j.fasteners.code))];
    const pricing = (some: string[]) => ({
      ...smallFloor(),
      fasteners: some.map((code) => ({ code, each_cents: 10 })),
    });
    const first = because(pricing(codes.slice(0, 1)));
    expect(first.bare).toBeGreaterThan(1);
    expect(first.said).toBe(
      `${first.all - first.bare} of ${first.all} pieces, spares with them; ${first.bare} have no price`,
    );
    const each = because(pricing([...codes, 'MS20470AD5']));
    expect([each.bare, each.said]).toEqual([0, `${each.all} pieces, spares with them`]);
  });
  it('without a schedule jig days are taken from hours, and that is said', () =>
    expect(ask().warnings.join()).toContain('not from a schedule'));
});

it('low end, P50 of the draws, high end: in this order, whatever the times and chances', () => {
  fc.assert(
    fc.property(
      fc.record({
        stretch: fc.double({ min: 1, max: 4, noNaN: true }),
        common: fc.double({ min: 0, max: 0.5, noNaN: true }),
        chance: fc.double({ min: 0, max: 1, noNaN: true }),
        seed: fc.nat(1000),
        price: fc.nat(100_000),
      }),
      ({ stretch, common, chance, seed, price }) => {
        const map = smallMap();
        const wide = (x: { likely_min: number }) => t(x.likely_min / stretch, x.likely_min, x.likely_min * stretch);
        map.parts = map.parts.map((p) => ({ ...p, take_off: wide(p.take_off), put_back: wide(p.put_back) }));
        map.each = {
          ...map.each,
          solid_rivet: Object.fromEntries(Object.entries(map.each.solid_rivet!).map(([k, x]) => [k, wide(x!)])),
        };
        map.looks = map.looks!.map((l) => ({ ...l, chance }));
        map.parts[1]!.order = { ...map.parts[1]!.order!, price_high_cents: 100_000 + price };
        const { quote, total } = ask({ map, chance: { seed, runs: 400, common } });
        expect(quote.range.low).toBeLessThanOrEqual(total.p50);
        expect(total.p50).toBeLessThanOrEqual(quote.range.high);
        expect(total.p50).toBeLessThanOrEqual(total.p80);
        expect(quote.contingency.p50).toBeLessThanOrEqual(quote.contingency.p80);
      },
    ),
    { numRuns: 40 },
  );
});
