import { SECONDS_PER_HOUR } from '../foundation/convert.ts';
import { daysBetween, type Moment } from '../foundation/day.ts';
import { constantForm, type LinearForm } from '../foundation/region/index.ts';
import type { Policy } from './document.ts';
import type { Ledger } from './ledger.ts';
import type { Finding } from './model.ts';
import { before, inOrder, notAfter } from './moments.ts';
import { allowedUses, covers, type DeclaredGap, overlaps, type UsePeriod } from './uses.ts';

/** Time of an aircraft between two cuts: one rule of use, one configuration. */
export interface Segment {
  readonly index: number;
  readonly from: Moment;
  readonly to: Moment;
  readonly uses: readonly string[];
  readonly periods: readonly UsePeriod[];
  /** Declared gap, or `bare`: no reading, no row, nothing. */
  readonly gap: DeclaredGap | 'bare' | null;
  /** Seconds and landings by use; inspections in gaps by kind. */
  readonly hours: Map<string, LinearForm>;
  readonly landings: Map<string, LinearForm>;
  readonly inspections: Map<string, LinearForm>;
  /** Sums over the uses, constant where the papers settle them whatever the use was. */
  totalHours: LinearForm;
  totalLandings: LinearForm;
  readonly entries: Set<string>;
  readonly variables: Set<number>;
  /** Uses of which a paper states more landings than the ceiling allows. */
  readonly noCeiling: Set<string>;
  landingsOpen: boolean;
}

export function segmentsOf(
  ledger: Ledger,
  cuts: readonly Moment[],
  end: Moment,
  periods: readonly UsePeriod[],
  gaps: readonly DeclaredGap[],
  bare: readonly { from: Moment; to: Moment }[],
  any: readonly string[],
  findings: Finding[],
): Segment[] {
  const edges = [
    ...cuts,
    ...periods.flatMap((p) => [p.from, p.to]),
    ...gaps.flatMap((g) => [g.from, g.to]),
    ...bare.flatMap((b) => [b.from, b.to]),
  ];
  const points = inOrder([ledger.built, end, ...edges.filter((m) => before(ledger.built, m) && before(m, end))]);
  return points.slice(1).map((to, index): Segment => {
    const from = points[index]!;
    const gap = gaps.find((g) => overlaps(g, from, to)) ?? (bare.some((b) => overlaps(b, from, to)) ? 'bare' : null);
    const covering = periods.filter((p) => covers(p, from, to));
    return {
      index,
      from,
      to,
      gap,
      periods: covering,
      uses: gap ? any : allowedUses(covering, any, findings),
      hours: new Map(),
      landings: new Map(),
      inspections: new Map(),
      totalHours: constantForm(0),
      totalLandings: constantForm(0),
      entries: new Set(),
      variables: new Set(),
      noCeiling: new Set(),
      landingsOpen: false,
    };
  });
}

/** A piece of time between neighbouring points: segment edges, readings of hours, readings of landings. */
export interface Piece {
  readonly segment: number;
  readonly hours: number;
  readonly landings: number;
  readonly to: Moment;
  /** Most that can have been flown in it besides listed rows. */
  readonly room_s: number;
}

/** Pieces of the whole life, in one walk. */
export function piecesOf(ledger: Ledger, segments: readonly Segment[], policy: Policy): Piece[] {
  const points = inOrder([
    ledger.built,
    ...segments.map((s) => s.to),
    ...ledger.knots.map((k) => k.moment),
    ...ledger.landingKnots.map((k) => k.moment),
  ]);
  const ceiling = policy.ceiling_hours_per_day * SECONDS_PER_HOUR;
  let s = 0;
  let i = 0;
  let j = 0;
  return points.slice(1).map((to, n): Piece => {
    const from = points[n]!;
    while (s < segments.length - 1 && notAfter(segments[s]!.to, from)) s++;
    while (i < ledger.knots.length - 1 && notAfter(ledger.knots[i + 1]!.moment, from)) i++;
    while (j < ledger.landingKnots.length - 1 && notAfter(ledger.landingKnots[j + 1]!.moment, from)) j++;
    const interval = ledger.intervals[i]!;
    const rest = interval.rest_s.high;
    const start = interval.from.moment.day;
    const days = interval.to ? daysBetween(start, interval.to.moment.day) : 0;
    const own = days === 0 && interval.to ? 1 : daysBetween(from.day, to.day);
    const free = interval.to ? rest > ceiling * Math.max(1, days) : false;
    const open =
      interval.to === null
        ? segments[s]!.gap
          ? own * ceiling
          : 0
        : own === 0
          ? 0
          : free
            ? rest
            : Math.min(rest, own * ceiling);
    return { segment: s, hours: i, landings: j, to, room_s: Math.max(0, open) };
  });
}
