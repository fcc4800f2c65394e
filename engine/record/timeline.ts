import { SECONDS_PER_HOUR } from '../foundation/convert.ts';
import { daysBetween, type Moment } from '../foundation/day.ts';
import { addForms, scaleForm } from '../foundation/region/index.ts';
import { fillGroups, type Shared } from './fill.ts';
import { groupsOf } from './groups.ts';
import type { Ledger } from './ledger.ts';
import type { Finding, RecordModel } from './model.ts';
import { before, latest } from './moments.ts';
import type { RegionBuilder } from './region-builder.ts';
import { addTo, note, placeRows } from './rows.ts';
import { piecesOf, type Segment, segmentsOf } from './segments.ts';
import { holdSplits, liftCeilings } from './splits.ts';
import { declaredGaps, periodsOfUse } from './uses.ts';
import { inspectionKinds } from './wording.ts';

export interface Timeline {
  readonly aircraft: string;
  readonly ledger: Ledger;
  readonly segments: readonly Segment[];
  readonly shared: readonly Shared[];
  /** Last reading or row: what lies after it is not part of the life. */
  readonly known: Moment;
  readonly findings: readonly Finding[];
}

/** A book that begins this late after the aircraft was built has a part missing, not a quiet start. */
export const LATE_BOOK_DAYS = 400;

/**
 * The whole life of an aircraft in segments, with every possible share of hours, landings and inspections as
 * forms over the region. Linear in the number of entries.
 */
export function timelineOf(
  model: RecordModel,
  ledger: Ledger,
  cuts: readonly Moment[],
  end: Moment,
  builder: RegionBuilder,
): Timeline {
  const { policy } = model;
  const findings: Finding[] = [];
  const last = [ledger.knots.at(-1)!.moment, ...ledger.rows.slice(-1).map((r) => r.to), end].reduce(latest);
  const periods = periodsOfUse(model, ledger.aircraft, last);
  const gaps = declaredGaps(model, ledger.aircraft);
  const bare = bareTimes(model, ledger, end, findings);
  const lateEdge = ledger.knots[1] && isLate(ledger) ? [ledger.knots[1].moment] : [];
  const known = [ledger.knots.at(-1)!.moment, ...ledger.rows.slice(-1).map((r) => r.to)].reduce(latest);
  const segments = segmentsOf(ledger, [...cuts, ...lateEdge, known], last, periods, gaps, bare, model.uses, findings);
  const pieces = piecesOf(ledger, segments, policy);
  const groups = groupsOf(ledger, pieces, segments);
  liftCeilings(periods, segments, policy);
  const rows = placeRows(ledger, pieces, segments, groups, builder, policy, findings);
  const shared = fillGroups(ledger, pieces, groups, rows.over, segments, builder, policy, findings);
  holdSplits(periods, segments, ledger.knots.at(-1)!.moment, builder, findings);
  inspectionsInGaps(model, ledger, segments, builder);
  return { aircraft: ledger.aircraft, ledger, segments, shared, known, findings };
}

/** True where the book begins with a total and nothing before it for more than a year. */
export const isLate = (ledger: Ledger): boolean => {
  const first = ledger.knots[1];
  return (
    first !== undefined &&
    ledger.intervals[0]!.rows.length === 0 &&
    ledger.intervals[0]!.rest_s.high > 0 &&
    daysBetween(ledger.built.day, first.moment.day) > LATE_BOOK_DAYS
  );
};

/** Time without any paper: from the build to the first row, or the whole life, where no total closes it. */
function bareTimes(
  model: RecordModel,
  ledger: Ledger,
  end: Moment,
  findings: Finding[],
): { from: Moment; to: Moment }[] {
  if (ledger.knots.length > 1) return [];
  const first = ledger.rows[0]?.from ?? end;
  const opening = ledger.knots[0]!.entry;
  if (ledger.rows.length > 0 && daysBetween(ledger.built.day, first.day) <= model.policy.stale_after_days) return [];
  if (!before(ledger.built, first)) return [];
  findings.push({
    code: 'record.no-reading',
    text: `No paper says what ${ledger.aircraft} flew from ${ledger.built.day} to ${first.day}; only the ceiling of ${model.policy.ceiling_hours_per_day} h a day bounds it.`,
    entries: [opening],
    remedy: 'Ask for any total with its day: a reading bounds everything before it',
  });
  return [{ from: ledger.built, to: first }];
}

/** In a gap more looks than hours over the interval are lawful: at most one per closest spacing, and one more. */
function inspectionsInGaps(
  model: RecordModel,
  ledger: Ledger,
  segments: readonly Segment[],
  builder: RegionBuilder,
): void {
  const closest_s = model.policy.closest_inspections_h * SECONDS_PER_HOUR;
  const late = isLate(ledger) ? ledger.knots[1]!.moment : null;
  const runs: Segment[][] = [];
  for (const s of segments) {
    const missing = s.gap !== null || (late !== null && !before(late, s.to));
    if (!missing) continue;
    const run = runs.at(-1);
    if (run?.at(-1)?.index === s.index - 1) run.push(s);
    else runs.push([s]);
  }
  for (const run of runs)
    for (const kind of inspectionKinds(model)) {
      const counts = run.flatMap((s) => {
        const hours = s.totalHours;
        const room = roomOf(hours, builder);
        if (room <= 0) return [];
        const n = builder.figure(
          `inspections ${kind}, ${s.from.day} to ${s.to.day}`,
          0,
          Math.floor(room / closest_s) + 1,
          true,
        );
        builder.hold(
          `inspections ${kind} no closer than stated, ${s.from.day} to ${s.to.day}`,
          addForms(scaleForm(n, closest_s), scaleForm(hours, -1)),
          Number.NEGATIVE_INFINITY,
          closest_s,
        );
        addTo(s.inspections, kind, n);
        note(s, n);
        return [{ n, hours }];
      });
      if (counts.length > 1)
        builder.hold(
          `inspections ${kind} in the gap from ${run[0]!.from.day}`,
          addForms(...counts.map((c) => scaleForm(c.n, closest_s)), ...counts.map((c) => scaleForm(c.hours, -1))),
          Number.NEGATIVE_INFINITY,
          closest_s,
        );
    }
}

const roomOf = (
  form: { constant: number; terms: readonly (readonly [number, number])[] },
  builder: RegionBuilder,
): number =>
  form.constant + form.terms.reduce((t, [v, c]) => t + (c > 0 ? c * builder.highOf(v) : c * builder.lowOf(v)), 0);
