import { SECONDS_PER_HOUR } from '../../foundation/convert.ts';
import type { Policy } from '../document.ts';
import { ROW, SPAN, type Sums } from './model.ts';
import { NotPlain } from './not-plain.ts';

/** What a plain aircraft had flown by the end of a day. Open stretches that lie before it count in the totals only. */
export interface Amounts {
  readonly total_s: number;
  readonly landings: number;
  /** Settled by use, in the order of `Sums.uses`. */
  readonly hours_s: Float64Array;
  readonly landingsBy: Float64Array;
  /** So many spans lie wholly before the end of the day. */
  readonly spans: number;
  /** The span that the day cuts in two, counted in nothing above; -1 for none. */
  readonly cut: number;
}
/** Ends of what a span that is cut in two holds before the cut. */
export interface Before {
  readonly hours_s: readonly [low: number, high: number];
  readonly landings: readonly [low: number, high: number];
}

/** Figures by the end of a day: one walk over the rows and spans. */
export function amountsAt(s: Sums, day: number): Amounts {
  const hours_s = new Float64Array(s.uses.length);
  const landingsBy = new Float64Array(s.uses.length);
  let [total_s, landings, spans] = [0, 0, 0];
  const { rows, spans: open } = s;
  for (let i = 0; i < rows.length && rows[i]! <= day; i += ROW) {
    const use = rows[i + 1]!;
    hours_s[use]! += rows[i + 2]!;
    landingsBy[use]! += rows[i + 3]!;
    total_s += rows[i + 2]!;
    landings += rows[i + 3]!;
  }
  let i = 0;
  for (; i < open.length && open[i + 1]! <= day; i += SPAN) {
    total_s += open[i + 2]!;
    landings += open[i + 3]!;
    spans++;
    const use = open[i + 4]!;
    if (use < 0) continue;
    hours_s[use]! += open[i + 2]!;
    landingsBy[use]! += open[i + 3]!;
  }
  const cut = i < open.length && open[i]! < day ? spans : -1;
  return { total_s, landings, hours_s, landingsBy, spans, cut };
}

/** True for a span in a gap: any use may have been flown in it. */
export const isLot = (s: Sums, span: number): boolean => s.spans[span * SPAN + 4]! < 0;
export const spanHours_s = (s: Sums, span: number): number => s.spans[span * SPAN + 2]!;
export const spanLandings = (s: Sums, span: number): number => s.spans[span * SPAN + 3]!;

/**
 * How much of a span that a day cuts in two lies before the end of that day: from what the other side cannot hold up
 * to what this one can, at the ceiling of hours a day.
 * @throws NotPlain where a side is so short that the ceiling on landings bites
 */
export function beforeCut(s: Sums, span: number, day: number, policy: Policy): Before {
  const i = span * SPAN;
  const [from, to, hours, landings] = [s.spans[i]!, s.spans[i + 1]!, s.spans[i + 2]!, s.spans[i + 3]!];
  const room = (days: number) => Math.min(hours, days * policy.ceiling_hours_per_day * SECONDS_PER_HOUR);
  const [early, late] = [room(day - from), room(to - day)];
  const most = (policy.ceiling_landings_per_hour / SECONDS_PER_HOUR) * Math.min(early, late);
  if (landings > most - 1) throw new NotPlain('a cut so near a reading that the ceiling of landings bites');
  return { hours_s: [hours - late, early], landings: [0, landings] };
}

/**
 * A gap that is cut holds the same histories as one that is not, as long as one of its sides could hold all of it.
 * @throws NotPlain
 */
export function refuseNarrow(s: Sums, cuts: readonly number[], policy: Policy): void {
  for (let i = 0; i < s.spans.length; i += SPAN) {
    if (s.spans[i + 4]! >= 0) continue;
    const [from, to] = [s.spans[i]!, s.spans[i + 1]!];
    let [widest, was] = [0, from];
    for (const c of cuts)
      if (c > from && c < to) {
        widest = Math.max(widest, c - was);
        was = c;
      }
    widest = Math.max(widest, to - was);
    if (widest * policy.ceiling_hours_per_day * SECONDS_PER_HOUR < s.spans[i + 2]!)
      throw new NotPlain('a gap that is cut into sides too short for it');
  }
}
