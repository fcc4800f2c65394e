import { type Bounds, exactly } from '../foundation/bounds.ts';
import { daysBetween } from '../foundation/day.ts';
import { hoursText, seconds } from './amounts.ts';
import type { Entry, EntryOf, Policy } from './document.ts';
import type { Knot, LandingKnot } from './knots.ts';
import { longestRising } from './longest.ts';
import { Meters } from './meters.ts';
import type { Finding } from './model.ts';
import { momentOf } from './moments.ts';

export interface Totals {
  /** The first is the day the aircraft was built, at 0 h. */
  readonly knots: readonly Knot[];
  readonly landingKnots: readonly LandingKnot[];
  readonly findings: readonly Finding[];
}

/**
 * Totals of an aircraft at its readings. A declared total is the legal figure; without one, the meter's run since
 * it was last read is added. Readings that fall below others are set aside and named; hours never fall. What would
 * follow if a reading set aside were the right one is held beside it (`disputes.ts`).
 */
export function readTotals(opening: EntryOf<'aircraft'>, own: readonly Entry[], policy: Policy): Totals {
  const findings: Finding[] = [];
  const readings = own.filter((e): e is EntryOf<'reading'> => e.kind === 'reading' && e.day >= opening.body.built);
  const first: Knot = {
    moment: { day: opening.body.built, order: -1 },
    total_s: 0,
    total: exactly(0),
    since_s: exactly(0),
    entry: opening.id,
    evidence: opening.evidence,
  };
  const declared = readings.filter((r) => r.body.total_h !== undefined);
  const kept = rising(declared, (r) => seconds(r.body.total_h!), 'record.totals-run-backwards', hoursText, findings);
  const meters = new Meters(policy, findings);
  const knots: Knot[] = [first];
  for (const e of own) {
    const last = knots.at(-1)!;
    if (e.kind === 'meter') meters.fit(e, last);
    if (e.kind !== 'reading' || e.day < opening.body.built) continue;
    const byMeter = e.body.shows_h === undefined ? null : meters.read(e, first);
    const total_s = kept.has(e) ? seconds(e.body.total_h!) : null;
    if (total_s !== null) meters.compare(e, total_s, byMeter);
    const total: Bounds | null =
      total_s === null
        ? e.body.total_h === undefined
          ? byMeter && { low: byMeter.low, high: byMeter.high }
          : null
        : exactly(total_s);
    if (!total) continue;
    const run = total_s === null && byMeter?.run?.since === last.entry ? byMeter.run.flown : null;
    const knot = knotAfter(last, e, total, run, findings);
    if (!knot) continue;
    knots.push(knot);
    meters.settle(e, knot);
  }
  const counted = readings.filter((r) => r.body.landings !== undefined);
  const keptLandings = rising(
    counted,
    (r) => r.body.landings!,
    'record.landings-run-backwards',
    (n) => `${n} landings`,
    findings,
  );
  const landingKnots = counted
    .filter((r) => keptLandings.has(r))
    .map((r) => ({ moment: momentOf(r), landings: r.body.landings!, entry: r.id }));
  return { knots, landingKnots: [{ moment: first.moment, landings: 0, entry: opening.id }, ...landingKnots], findings };
}

function knotAfter(
  last: Knot,
  e: EntryOf<'reading'>,
  total: Bounds,
  run: Bounds | null,
  findings: Finding[],
): Knot | null {
  if (total.high < last.total.low) {
    findings.push({
      code: 'record.totals-run-backwards',
      text: `The reading of ${e.day} gives ${hoursText(total.high)}, below ${hoursText(last.total.low)} on ${last.moment.day}.`,
      entries: [last.entry, e.id],
      remedy: 'Correct one of the two, or record the change of meter',
    });
    return null;
  }
  const since_s = run ?? { low: Math.max(0, total.low - last.total.high), high: total.high - last.total.low };
  const days = Math.max(1, daysBetween(last.moment.day, e.day));
  if (since_s.low > days * 86_400)
    findings.push({
      code: 'record.more-than-24-hours-a-day',
      text: `${hoursText(since_s.low)} from ${last.moment.day} to ${e.day}: more than 24 hours a day.`,
      entries: [last.entry, e.id],
      remedy: 'Correct the day or the total',
    });
  const total_s = total.low === total.high ? total.low : null;
  return { moment: momentOf(e), total_s, total, since_s, entry: e.id, evidence: e.evidence };
}

function rising<R extends Entry>(
  rows: readonly R[],
  figure: (r: R) => number,
  code: string,
  text: (n: number) => string,
  findings: Finding[],
): Set<R> {
  const values = rows.map(figure);
  const kept = longestRising(values);
  const out = new Set<R>();
  let last = -1;
  rows.forEach((r, i) => {
    if (kept.has(i)) {
      out.add(r);
      last = i;
      return;
    }
    const next = rows.findIndex((_, k) => k > i && kept.has(k) && values[k]! < values[i]!);
    const other = last >= 0 && values[last]! > values[i]! ? last : next >= 0 ? next : last;
    findings.push({
      code,
      text: `${text(values[i]!)} on ${r.day} does not fit ${text(values[other] ?? 0)} on ${rows[other]?.day ?? r.day}; it is set aside, and the worse side of the two counts until one is corrected.`,
      entries: other >= 0 ? [rows[other]!.id, r.id] : [r.id],
      remedy: 'Look at both rows and correct the wrong one',
    });
  });
  return out;
}
