import { SECONDS_PER_HOUR } from '../foundation/convert.ts';
import { daysBetween } from '../foundation/day.ts';
import { addForms, constantForm, type LinearForm } from '../foundation/region/index.ts';
import type { Policy } from './document.ts';
import { add, type Group, type Groups, pieceAt } from './groups.ts';
import type { FlightsRow, Ledger } from './ledger.ts';
import type { Finding } from './model.ts';
import { before, earliest, latest } from './moments.ts';
import type { RegionBuilder } from './region-builder.ts';
import type { Piece, Segment } from './segments.ts';

type Sum = { s: number; n: number };
export interface Rows {
  /** Sums over landing intervals whose rows list more than the totals say. */
  readonly over: Map<number, LinearForm[]>;
}

/**
 * Puts every listed row into its segment: hours and landings in a known use are constants there, what a row
 * leaves open becomes a group. A row that runs over a cut is shared among the segments it touches.
 */
export function placeRows(
  ledger: Ledger,
  pieces: readonly Piece[],
  segments: readonly Segment[],
  groups: Groups,
  builder: RegionBuilder,
  policy: Policy,
  findings: Finding[],
): Rows {
  const sums = segments.map(() => new Map<string, Sum>());
  const loose = new Map<string, Group>();
  const rows: Rows = { over: new Map() };
  const overSums = new Map<string, { segment: number; use: string; j: number; n: number }>();
  const put = (segment: number, use: string, s: number, n: number) => {
    const sum = sums[segment]!.get(use);
    if (sum) {
      sum.s += s;
      sum.n += n;
    } else sums[segment]!.set(use, { s, n });
  };
  const openGroup = (key: string, segment: number, uses: readonly string[] | null, start: Partial<Group>): Group => {
    let g = loose.get(key);
    if (!g) {
      g = { segment, uses, hours_s: 0, room_s: 0, interval: null, landings: 0, landingInterval: null, ...start };
      loose.set(key, g);
      groups.all.push(g);
      if (g.landingInterval !== null) add(groups.byLanding, g.landingInterval, g);
      if (g.landings === null && g.landingInterval === null) segments[segment]!.landingsOpen = true;
      if (g.interval !== null) add(groups.byInterval, g.interval, g);
    }
    return g;
  };
  const lastOf = new Map<number, { segment: number; use: string }>();
  ledger.intervals.forEach((interval, i) => {
    for (const row of interval.rows) {
      const piece = pieces[pieceAt(pieces, row.to)]!;
      const own = segments[piece.segment]!;
      own.entries.add(row.entry.id);
      const j = ledger.landingIntervals[piece.landings]!;
      const jKey = j.to ? piece.landings : null;
      const fixed = row.use ?? (own.uses.length === 1 ? own.uses[0]! : null);
      if (row.use !== null && !own.gap && own.periods.length > 0 && !own.uses.includes(row.use))
        contradicts(row, own, findings);
      if (before(row.from, own.from) && interval.all_s === null) {
        shareRow(row, ledger, segments, builder, policy);
        continue;
      }
      const capped = interval.all_s !== null;
      const hours = capped ? 0 : row.hours_s;
      if (capped)
        openGroup(`over|${piece.segment}|${i}|${fixed}`, piece.segment, fixed === null ? null : [fixed], {
          hours_s: null,
          interval: i,
        }).room_s += row.hours_s;
      if (row.landings === null) {
        const g = openGroup(`open|${piece.segment}|${fixed}|${jKey}`, piece.segment, fixed === null ? null : [fixed], {
          landings: null,
          landingInterval: jKey,
        });
        g.hours_s! += hours;
      } else if (fixed === null) {
        const g = openGroup(`any|${piece.segment}`, piece.segment, null, {});
        g.hours_s! += hours;
        g.landings! += row.landings;
      } else if (j.over) {
        const key = `${piece.segment}|${fixed}|${piece.landings}`;
        const sum = overSums.get(key) ?? { segment: piece.segment, use: fixed, j: piece.landings, n: 0 };
        sum.n += row.landings;
        overSums.set(key, sum);
        put(piece.segment, fixed, hours, 0);
      } else put(piece.segment, fixed, hours, row.landings);
      if (fixed !== null) lastOf.set(piece.landings, { segment: piece.segment, use: fixed });
    }
  });
  ledger.landingIntervals.forEach((j, n) => {
    const last = lastOf.get(n);
    if (!j.rest || !last || (groups.byLanding.get(n)?.length ?? 0) > 0) return;
    if (pieces.some((p) => p.landings === n && p.room_s > 0)) return;
    put(last.segment, last.use, 0, j.rest);
    findings.push({
      code: 'record.carried-landings-slip',
      text: `From ${j.from.moment.day} to ${j.to!.moment.day} the rows list ${j.all! - j.rest} landings, the totals say ${j.all}. The declared total stands.`,
      entries: [j.from.entry, j.to!.entry],
      remedy: 'Add the rows up again and look for the one that is wrong or missing',
    });
  });
  sums.forEach((uses, k) => {
    for (const [use, sum] of uses) {
      const [hours, landings] = [constantForm(sum.s), constantForm(sum.n)];
      flown(segments[k]!, use, hours, landings);
      inTotal(segments[k]!, hours, landings);
    }
  });
  for (const { segment, use, j, n } of overSums.values()) {
    const form = builder.figure(`landings ${use} of listed rows from ${segments[segment]!.from.day}`, 0, n, true);
    flown(segments[segment]!, use, constantForm(0), form);
    inTotal(segments[segment]!, constantForm(0), form);
    add(rows.over, j, form);
  }
  return rows;
}

export const addTo = (map: Map<string, LinearForm>, key: string, form: LinearForm): void => {
  const was = map.get(key);
  map.set(key, was ? addForms(was, form) : form);
};
/** Adds hours or landings in one use to a segment. */
export function flown(s: Segment, use: string, hours: LinearForm, landings: LinearForm): void {
  addTo(s.hours, use, hours);
  addTo(s.landings, use, landings);
  note(s, hours);
  note(s, landings);
}
export function inTotal(s: Segment, hours: LinearForm, landings: LinearForm): void {
  s.totalHours = addForms(s.totalHours, hours);
  s.totalLandings = addForms(s.totalLandings, landings);
}
export const note = (segment: Segment, form: LinearForm): void => {
  for (const [v] of form.terms) segment.variables.add(v);
};

/** A row that runs over a cut: its hours and landings are shared among the segments, none known where. */
function shareRow(
  row: FlightsRow,
  ledger: Ledger,
  segments: readonly Segment[],
  builder: RegionBuilder,
  policy: Policy,
): void {
  const from = latest(row.from, ledger.built);
  const touched = segments.filter((s) => before(from, s.to) && before(s.from, row.to));
  const uses = row.use === null ? [...new Set(touched.flatMap((s) => s.uses))] : [row.use];
  const hours: LinearForm[] = [];
  const landings: LinearForm[] = [];
  const days = Math.max(1, daysBetween(from.day, row.to.day));
  const rate = Math.max(policy.ceiling_hours_per_day * SECONDS_PER_HOUR, row.hours_s / days);
  const most = row.landings ?? Math.ceil((row.hours_s / SECONDS_PER_HOUR) * policy.ceiling_landings_per_hour);
  for (const s of touched) {
    const span = daysBetween(latest(from, s.from).day, earliest(row.to, s.to).day);
    if (span <= 0) continue;
    for (const use of row.use === null ? s.uses : uses) {
      const name = `row ${row.entry.id}, ${use}, from ${s.from.day}`;
      const h = builder.figure(`hours of ${name}`, 0, Math.min(row.hours_s, rate * span));
      const l = builder.figure(`landings of ${name}`, 0, most, true);
      flown(s, use, h, l);
      inTotal(s, h, l);
      hours.push(h);
      landings.push(l);
    }
  }
  builder.hold(`hours of row ${row.entry.id}`, addForms(...hours), row.hours_s, row.hours_s);
  builder.hold(`landings of row ${row.entry.id}`, addForms(...landings), row.landings ?? 0, most);
}

function contradicts(row: FlightsRow, own: Segment, findings: Finding[]): void {
  const period = own.periods[0]!.entry.id;
  if (findings.some((f) => f.code === 'record.row-against-use' && f.entries[1] === period)) return;
  findings.push({
    code: 'record.row-against-use',
    text: `The row of ${row.to.day} was flown ${row.use}, where another paper states ${own.uses.join(', ')}. The row stands.`,
    entries: [row.entry.id, period],
    remedy: 'Correct the use of the row or the days of the other paper',
  });
}
