import { SECONDS_PER_HOUR } from '../foundation/convert.ts';
import type { Day } from '../foundation/day.ts';
import { addForms, constantForm, type LinearForm, scaleForm } from '../foundation/region/index.ts';
import type { Policy } from './document.ts';
import { type Group, type Groups, landingIndex } from './groups.ts';
import type { Ledger } from './ledger.ts';
import type { Finding } from './model.ts';
import type { RegionBuilder } from './region-builder.ts';
import { flown, inTotal, note } from './rows.ts';
import type { Piece, Segment } from './segments.ts';

interface Filled {
  readonly byUse: readonly { readonly use: string; readonly hours: LinearForm; readonly landings: LinearForm }[];
  readonly hours: LinearForm;
  readonly landings: LinearForm;
}
/** Hours between two readings that a cut runs through: how much lies on either side is open. */
export interface Shared {
  readonly from: Day;
  readonly to: Day;
  readonly segments: readonly number[];
  readonly entries: readonly string[];
  readonly variables: readonly number[];
}
const TINY_S = 1;
/** Whole landings that a ceiling allows; a last digit of rounding is no landing. */
const most = (n: number): number => Math.ceil(n - 1e-6);

/**
 * Gives every group its hours and landings by use: constants where one use and a settled figure leave nothing
 * open, variables under their sums otherwise. Landings of a use never exceed the ceiling per hour of that use,
 * unless the papers themselves state more.
 */
export function fillGroups(
  ledger: Ledger,
  pieces: readonly Piece[],
  groups: Groups,
  over: ReadonlyMap<number, readonly LinearForm[]>,
  segments: readonly Segment[],
  builder: RegionBuilder,
  policy: Policy,
  findings: Finding[],
): Shared[] {
  const free = manyLandings(ledger, pieces, policy, findings);
  const filled = new Map<Group, Filled>();
  for (const g of groups.all) filled.set(g, fill(g, segments[g.segment]!, ledger, builder, policy, free));
  for (const [i, list] of groups.byInterval) {
    const v = ledger.intervals[i]!;
    if (!v.to) continue;
    const sum = addForms(...list.map((g) => filled.get(g)!.hours));
    const low = v.all_s ?? v.rest_s.low;
    const high = v.all_s ?? v.rest_s.high;
    builder.hold(
      `hours from ${v.from.moment.day} (entry ${v.from.entry}) to ${v.to.moment.day} (entry ${v.to.entry})`,
      sum,
      low,
      high,
    );
  }
  const landingSums = new Set([...groups.byLanding.keys(), ...over.keys()]);
  for (const j of landingSums) {
    const v = ledger.landingIntervals[j]!;
    if (v.rest === null) continue;
    const forms = [...(groups.byLanding.get(j) ?? []).map((g) => filled.get(g)!.landings), ...(over.get(j) ?? [])];
    const known = v.over ? v.all! : v.rest;
    const name = `landings from ${v.from.moment.day} (entry ${v.from.entry}) to ${v.to!.moment.day} (entry ${v.to!.entry})`;
    builder.holdIfPossible(name, addForms(...forms), known, known, v.to!.entry);
  }
  exactSpans(ledger, groups, filled, builder);
  enter(ledger, groups, over, filled, segments);
  return [...groups.byInterval].flatMap(([i, list]) => {
    const v = ledger.intervals[i]!;
    if (!v.to || new Set(list.map((g) => g.segment)).size < 2) return [];
    const terms = list.flatMap((g) => [...filled.get(g)!.hours.terms, ...filled.get(g)!.landings.terms]);
    return [
      {
        from: v.from.moment.day,
        to: v.to.moment.day,
        segments: list.map((g) => g.segment),
        entries: [v.from.entry, v.to.entry],
        variables: [...new Set(terms.map(([n]) => n))].sort((a, b) => a - b),
      },
    ];
  });
}

function fill(
  g: Group,
  s: Segment,
  ledger: Ledger,
  builder: RegionBuilder,
  policy: Policy,
  free: ReadonlySet<number>,
): Filled {
  const uses = g.uses ?? s.uses;
  const room = g.hours_s ?? g.room_s;
  const ceiling = policy.ceiling_landings_per_hour / SECONDS_PER_HOUR;
  const j = g.landingInterval === null ? null : ledger.landingIntervals[g.landingInterval]!;
  const top =
    g.landings ??
    (j ? Math.min(j.rest!, free.has(g.landingInterval!) ? j.rest! : most(ceiling * room)) : most(ceiling * room));
  const unlimited =
    (g.landings !== null && g.landings > ceiling * room) || (g.landingInterval !== null && free.has(g.landingInterval));
  const hours: LinearForm[] = [];
  const landings: LinearForm[] = [];
  const byUse: Filled['byUse'][number][] = [];
  const where = `${s.from.day} to ${s.to.day}`;
  for (const use of uses) {
    const single = uses.length === 1;
    const h =
      single && g.hours_s !== null ? constantForm(g.hours_s) : builder.figure(`hours ${use}, ${where}`, 0, room);
    const l =
      single && g.landings !== null
        ? constantForm(g.landings)
        : builder.figure(`landings ${use}, ${where}`, 0, top, true);
    if (!unlimited && !s.noCeiling.has(use) && h.terms.length > 0 && l.terms.length > 0)
      builder.hold(
        `landings per hour ${use}, ${where}`,
        addForms(l, scaleForm(h, -ceiling)),
        Number.NEGATIVE_INFINITY,
        room < TINY_S ? top : 0,
      );
    byUse.push({ use, hours: h, landings: l });
    hours.push(h);
    landings.push(l);
  }
  const sum = { hours: addForms(...hours), landings: addForms(...landings) };
  if (uses.length > 1) {
    if (g.hours_s !== null) builder.hold(`hours, ${where}`, sum.hours, g.hours_s, g.hours_s);
    else if (Number.isFinite(room)) builder.hold(`hours at most, ${where}`, sum.hours, 0, room);
    if (g.landings !== null) builder.hold(`landings, ${where}`, sum.landings, g.landings, g.landings);
  }
  return {
    byUse,
    hours: g.hours_s === null ? sum.hours : constantForm(g.hours_s),
    landings: g.landings === null ? sum.landings : constantForm(g.landings),
  };
}

/**
 * Enters the groups into their segments. The last group of an interval is what the others leave of it, so that
 * the sum over the whole interval is a constant again.
 */
function enter(
  ledger: Ledger,
  groups: Groups,
  over: ReadonlyMap<number, readonly LinearForm[]>,
  filled: ReadonlyMap<Group, Filled>,
  segments: readonly Segment[],
): void {
  const left = new Map<Group, { hours?: LinearForm; landings?: LinearForm }>();
  const leave = (what: 'hours' | 'landings', list: readonly Group[], known: number) => {
    const last = list.at(-1)!;
    const others = addForms(...list.slice(0, -1).map((g) => filled.get(g)![what]));
    left.set(last, { ...left.get(last), [what]: addForms(constantForm(known), scaleForm(others, -1)) });
  };
  for (const [i, list] of groups.byInterval) {
    const v = ledger.intervals[i]!;
    const known = v.all_s ?? (v.rest_s.low === v.rest_s.high ? v.rest_s.low : null);
    if (v.to && known !== null) leave('hours', list, known);
  }
  for (const [j, list] of groups.byLanding) {
    const v = ledger.landingIntervals[j]!;
    if (v.rest !== null && !over.has(j)) leave('landings', list, v.rest);
  }
  for (const [g, f] of filled) {
    const s = segments[g.segment]!;
    const rest = { hours: f.hours, landings: f.landings, ...left.get(g) };
    const single = f.byUse.length === 1;
    for (const u of f.byUse) {
      flown(s, u.use, single ? rest.hours : u.hours, single ? rest.landings : u.landings);
      note(s, u.hours);
      note(s, u.landings);
    }
    inTotal(s, rest.hours, rest.landings);
  }
}

/** Intervals in which the papers state more landings per hour than the ceiling: there it does not hold. */
function manyLandings(ledger: Ledger, pieces: readonly Piece[], policy: Policy, findings: Finding[]): Set<number> {
  const out = new Set<number>();
  const room = new Map<number, Map<number, number>>();
  for (const p of pieces) {
    const own = room.get(p.landings) ?? new Map<number, number>();
    own.set(p.hours, (own.get(p.hours) ?? 0) + p.room_s);
    room.set(p.landings, own);
  }
  const listed = new Map<number, number>();
  for (const r of ledger.rows)
    if (r.landings === null) {
      const j = landingIndex(ledger, pieces, r.to);
      listed.set(j, (listed.get(j) ?? 0) + r.hours_s);
    }
  ledger.landingIntervals.forEach((j, n) => {
    if (!j.to) return;
    let hours = listed.get(n) ?? 0;
    for (const [i, s] of room.get(n) ?? []) {
      const v = ledger.intervals[i]!;
      hours += v.to ? Math.min(s, v.rest_s.high) : s;
    }
    if (j.rest! <= (hours / SECONDS_PER_HOUR) * policy.ceiling_landings_per_hour) return;
    out.add(n);
    findings.push({
      code: 'record.many-landings',
      text: `${j.rest} landings in ${Math.round(hours / 36) / 100} h that no row lists, from ${j.from.moment.day} to ${j.to.moment.day}: more than ${policy.ceiling_landings_per_hour} an hour.`,
      entries: [j.from.entry, j.to.entry],
      remedy: 'Correct the landings or the hours, or state a higher ceiling; the stated figures are used',
    });
  });
  return out;
}

/** Several bounded intervals between two settled totals add up to their difference. */
function exactSpans(ledger: Ledger, groups: Groups, filled: ReadonlyMap<Group, Filled>, builder: RegionBuilder): void {
  let start = 0;
  ledger.knots.forEach((k, n) => {
    if (n === 0 || k.total_s === null) return;
    const from = ledger.knots[start]!;
    if (n - start > 1) {
      const parts = Array.from({ length: n - start }, (_, x) => start + x);
      const rows = parts.reduce(
        (t, i) =>
          t + (ledger.intervals[i]!.all_s === null ? ledger.intervals[i]!.rows.reduce((u, r) => u + r.hours_s, 0) : 0),
        0,
      );
      const forms = parts.flatMap((i) => {
        const list = groups.byInterval.get(i);
        return list ? list.map((g) => filled.get(g)!.hours) : [constantForm(ledger.intervals[i]!.rest_s.low)];
      });
      const known = k.total_s - from.total_s! - rows;
      builder.holdIfPossible(
        `total from ${from.moment.day} (entry ${from.entry}) to ${k.moment.day} (entry ${k.entry})`,
        addForms(...forms),
        known,
        known,
        k.entry,
      );
    }
    start = n;
  });
}
