import { addBounds, type Bounds, exactly } from '../../foundation/bounds.ts';
import { addDays } from '../../foundation/day.ts';
import { randomSource } from '../../foundation/random.ts';
import type { QuoteTerms, TeardownDocument } from '../document.ts';
import type { Floor } from '../floor-document.ts';
import type { Plan, Quote, QuoteLine, Schedule, Shopping } from '../model.ts';
import type { ThreePoint } from '../structure-document.ts';
import { findingRuns, itemOf, shareOf } from './contingency.ts';
import { GROUPS, groupOf, handsOf, hoursMoments, rangeOf, recordedMinutes, setupMinutes } from './hours.ts';
import { findingCosts, ifFoundLines } from './if-found.ts';
import { jigDaysOf } from './jig-days.ts';
import { endOf, outrunOf } from './lead.ts';

/** A quote with what its chances came from. */
export interface Quoted {
  readonly quote: Quote;
  /** Whole sum of the draws, cents. */
  readonly total: { readonly p50: number; readonly p80: number };
  readonly hours: { readonly mean_h: number; readonly variance_h2: number };
  readonly warnings: readonly string[];
}
const times = (b: Bounds, k: number): Bounds => ({ low: Math.round(b.low * k), high: Math.round(b.high * k) });
const sumOf = (lines: readonly { cents: Bounds }[]) => lines.reduce((s, l) => addBounds(s, l.cents), exactly(0));

/**
 * What the job costs: a range, what is certain, what is charged only if found, and when to call the owner.
 *
 * What: hours by group, each line from one in ten to nine in ten with the cause that all times share; parts, fasteners,
 * jig days, sums of others. Contingency is P50 and P80 of what findings add. The range runs from the low ends to the high
 * ends with the P80 of the findings.
 * How: line ends are added as if all went well, or badly, at once. Findings are drawn, keyed (seed, finding). Waiting for
 * a part moves the days and asks for storage.
 * Not valid for: damage that no look of the map names.
 * @returns whole cents, hours, days
 * @see shopfloor text on estimating: three points, findings in two stages, shared cause
 */
export function quoted(
  document: TeardownDocument & { readonly floor: Floor; readonly quote: QuoteTerms },
  plan: Plan,
  schedule: Schedule | null,
  shopping: Shopping,
): Quoted {
  const { floor, quote: terms, chance } = document;
  const { all, lines: ofHours } = hourLines(document, plan);
  const jig = jigDaysOf(document, plan, schedule);
  const others = [...goodsLines(document, plan, shopping), ...jigLines(floor, jig), ...sumsOfOthers(terms)];
  const base = [...ofHours, ...others];
  const baseTotal = sumOf(base);
  const findings = findingCosts(document, plan);
  const runs = findingRuns(findings, chance.seed, chance.runs);
  const contingency = { p50: Math.round(shareOf(runs, 0.5)), p80: Math.round(shareOf(runs, 0.8)) };
  const outrun = outrunOf(document, plan, schedule);
  const storage = storageOf(floor, outrun);
  const range = {
    low: baseTotal.low + (storage?.cents.low ?? 0),
    high: baseTotal.high + (storage?.cents.high ?? 0) + contingency.p80,
  };
  const stop = terms.stop_and_call_cents;
  const end = endOf(document, schedule);
  const hours = ofHours.reduce((s, l) => addBounds(s, l.hours!), exactly(0));
  const moments = hoursMoments(all);
  const quote: Quote = {
    day: document.day,
    validUntil: addDays(document.day, terms.valid_days),
    base,
    baseTotal,
    ifFound: ifFoundLines(document, findings),
    contingency,
    range,
    stopAndCall_cents: stop,
    passes: range.low > stop ? 'always' : range.high > stop ? 'at the high end' : 'never',
    finish: end
      ? { early: addDays(end.end, outrun?.waits_days.low ?? 0), late: addDays(end.p80, outrun?.waits_days.high ?? 0) }
      : null,
    outrun,
    storage,
    installer: plan.operations.filter((o) => o.who === 'installer' && !o.unattended).map((o) => o.title),
    excluded: [
      ...terms.excluded,
      ...shopping.lines.filter((l) => l.cents === null).map((l) => `Not priced: ${l.what}, ${l.code}`),
    ],
    currency: floor.currency,
    hours,
    jigDays: jig.days,
  };
  const total = totalOf(moments, floor, [...others, ...(storage ? [storage] : [])], runs, chance);
  return { quote, total, hours: moments, warnings: jig.warnings };
}
export const quoteOf = (...given: Parameters<typeof quoted>): Quote => quoted(...given).quote;

function hourLines(
  document: TeardownDocument & { floor: Floor },
  plan: Plan,
): { all: ThreePoint[]; lines: QuoteLine[] } {
  const recorded = recordedMinutes(document);
  const rate = document.floor.hour_cents;
  const setups = setupMinutes(document, plan);
  const all: ThreePoint[] = [];
  const line = (name: string, list: readonly ThreePoint[], because: string): QuoteLine[] => {
    if (list.length === 0) return [];
    all.push(...list);
    const hours = rangeOf(list, document.chance.common);
    return [{ name, hours, cents: times(hours, rate), because }];
  };
  const groups = GROUPS.flatMap((group) => {
    const own = plan.operations.filter((o) => groupOf(o) === group).flatMap((o) => handsOf(o, recorded) ?? []);
    return line(group, own, `${own.length} ${own.length === 1 ? 'step' : 'steps'}`);
  });
  const turns = setups.high_min > 0 ? [setups] : [];
  const { flips, toolChanges } = plan.setups;
  return {
    lines: [
      ...groups,
      ...line('Turning the wing, changing tools', turns, `${flips} turns, ${toolChanges} changes of tool`),
    ],
    all,
  };
}

function goodsLines({ map }: TeardownDocument, plan: Plan, shopping: Shopping): QuoteLine[] {
  const line = (name: string, cents: Bounds, because: string): QuoteLine[] =>
    cents.high > 0 ? [{ name, hours: null, cents, because }] : [];
  const lines = shopping.lines.filter((l) => l.cents !== null);
  const of = (want: (kind: string) => boolean) => lines.filter((l) => want(l.kind));
  const goods = (list: typeof lines) => list.reduce((s, l) => addBounds(s, l.cents!), exactly(0));
  const parts = of((k) => k === 'part').flatMap((l) => line(`Part: ${l.what}`, l.cents!, l.code));
  const isFastener = (kind: string) => kind !== 'part' && kind !== 'consumable' && kind !== 'tool';
  const fasteners = of(isFastener);
  const consumables = of((k) => k === 'consumable');
  const jobs = new Set(plan.operations.filter((o) => o.kind === 'job').map((o) => o.of));
  const jobParts = map.jobs.filter((j) => jobs.has(j.id)).reduce((s, j) => s + j.parts_cents, 0);
  const pieces = (list: Shopping['lines']) => list.reduce((s, l) => s + l.count + l.spares, 0);
  const all = pieces(shopping.lines.filter((l) => isFastener(l.kind)));
  return [
    ...parts,
    ...line('Fasteners', goods(fasteners), piecesInWords(pieces(fasteners), all)),
    ...line('Consumables', goods(consumables), `${consumables.length} kinds`),
    ...line('Parts of the small jobs', exactly(jobParts), `${jobs.size} jobs`),
  ];
}

/** "751 of 768 pieces, spares with them; 17 have no price": as many as on the shopping list. */
function piecesInWords(priced: number, all: number): string {
  if (priced === all) return `${all} pieces, spares with them`;
  return `${priced} of ${all} pieces, spares with them; ${all - priced} ${all - priced === 1 ? 'has' : 'have'} no price`;
}

const jigLines = (floor: Floor, jig: { days: Bounds; because: string }): QuoteLine[] =>
  jig.days.high > 0
    ? [{ name: 'Jig', hours: null, cents: times(jig.days, floor.jig_day_cents), because: jig.because }]
    : [];

function sumsOfOthers(terms: QuoteTerms): QuoteLine[] {
  const line = (name: string, s: { low: number; high: number }): QuoteLine => ({
    name,
    hours: null,
    cents: { low: Math.min(s.low, s.high), high: Math.max(s.low, s.high) },
    because: 'Sum of others',
  });
  return [
    ...(terms.freight_cents ? [line('Freight', terms.freight_cents)] : []),
    ...(terms.paint_cents ? [line('Paint', terms.paint_cents)] : []),
    ...terms.further.map((f) => line(f.name, { low: f.low_cents, high: f.high_cents })),
  ];
}

const storageOf = (floor: Floor, outrun: Quote['outrun']): QuoteLine | null =>
  outrun && floor.storage_day_cents > 0
    ? {
        name: 'Storage while the part is awaited',
        hours: null,
        cents: times(outrun.waits_days, floor.storage_day_cents),
        because: `${outrun.waits_days.low} to ${outrun.waits_days.high} days`,
      }
    : null;

const OF_THE_WHOLE = itemOf('the whole sum');
/** P50 and P80 of the whole: hours as many small steps together, times the shared cause; other sums evenly between their ends; findings. */
function totalOf(
  moments: { mean_h: number; variance_h2: number },
  floor: Floor,
  others: readonly { cents: Bounds }[],
  findings: Float64Array,
  { seed, common }: TeardownDocument['chance'],
): Quoted['total'] {
  const random = randomSource(seed, OF_THE_WHOLE);
  const spread = Math.sqrt(moments.variance_h2);
  const sums = findings.map((found) => {
    const hours = Math.max(0, moments.mean_h + spread * random.normal());
    const shared = Math.exp(common * random.normal() - (common * common) / 2);
    const rest = others.reduce((s, o) => s + o.cents.low + (o.cents.high - o.cents.low) * random.next(), 0);
    return hours * shared * floor.hour_cents + rest + found;
  });
  return { p50: Math.round(shareOf(sums, 0.5)), p80: Math.round(shareOf(sums, 0.8)) };
}
