import { type Day, dayNumber, directive, type outlook } from '../../engine/index.ts';
import { arrival, arrivalNumber } from '../display.ts';
import { aboutWords, atOnce, isOpen, rank, shownRank, type Told, unsettled, WORST_FIRST } from '../standing.ts';

/** A slim answer with the name of its part, as stored. */
export interface FleetLine extends directive.StandingLine {
  /** "left inboard spar" */
  readonly partName: string;
}
export interface FleetReading {
  readonly day: Day;
  readonly total_s: number;
  readonly landings: number | null;
}
/** One aircraft as the desk knows it: the last answers that were stored, and whether they still hold. */
export interface FleetAircraft {
  readonly id: string;
  readonly registration: string;
  readonly type: string;
  readonly model: string;
  readonly serial: string;
  readonly owner: string | null;
  readonly base: string | null;
  readonly reading: FleetReading | null;
  /** What an owner reads: the meter that the record knows, and whether landings count. */
  readonly reads: { readonly meter: string | null; readonly landings: boolean };
  readonly lines: readonly FleetLine[];
  /** The day its answers were computed for; null: none are stored. */
  readonly asOf: Day | null;
  /** False where something came in that its answers do not know. */
  readonly holds: boolean;
  /** Why something of it could not be computed: it is then treated as due. */
  readonly notComputed: readonly string[];
}

/** A line as it stands on the day of the page, in the form whose words are shared with the other pages. */
export interface ShownLine extends Told {
  readonly line: FleetLine;
  readonly aircraft: FleetAircraft;
  readonly open: boolean;
  /** Where it is placed in time; null: nothing tells. */
  readonly when: Day | null;
  readonly about: string;
}

const dayOfArrival = (a: outlook.Arrival, today: Day): Day =>
  a.is === 'not before' ? (`${a.year}-07-01` as Day) : a.is === 'reached' || a.day < today ? today : a.day;

function shownLine(line: FleetLine, aircraft: FleetAircraft, today: Day): ShownLine {
  const told: Told = {
    notComputed: line.notComputed ? 'it could not be computed' : null,
    standing: line.notComputed ? { worst: 'due', best: 'due' } : directive.standingOn(line, today),
    day: today,
    treatAs: line.treatAs,
  };
  const open = isOpen(told);
  const dates = line.dates ?? undefined;
  const due = line.treatAs.dueAt.day;
  const when = !open
    ? null
    : atOnce(told)
      ? today
      : dates
        ? dayOfArrival(dates.treatAs.p50, today)
        : due && (due < today ? today : due);
  return { ...told, line, aircraft, open, when, about: aboutWords(told, dates, today) };
}

/** Where the whole range of a line lies: flying from the worse side, papers to the better. */
export function rangeOf(s: ShownLine): { from: number; to: number } | null {
  const d = s.line.dates;
  if (!d || s.when === null || s.notComputed) return null;
  const at = dayNumber(s.when);
  return {
    from: Math.min(at, arrivalNumber(d.treatAs.p10, s.day)),
    to: Math.max(at, arrivalNumber(d.couldBecome.p90, s.day)),
  };
}
export const p10Words = (s: ShownLine): string =>
  !s.open || atOnce(s) || !s.line.dates ? '' : arrival(s.line.dates.treatAs.p10, s.day);
export const becomeWords = (s: ShownLine): string =>
  s.line.dates && !s.notComputed ? arrival(s.line.dates.couldBecome.p50, s.day) : '';

const FAR = Number.POSITIVE_INFINITY;
const at = (s: ShownLine): number => (s.when ? dayNumber(s.when) : FAR);
const pressing = (s: ShownLine): number => Math.min(shownRank(s), rank('soon due'));
const HANDS = ['left', 'right'];
const hand = (s: ShownLine): number => HANDS.findIndex((h) => s.line.partName.startsWith(h));
/** Overdue and due before all, then by the day of the worse side, then left before right. */
export const bitesBefore = (a: ShownLine, b: ShownLine): number =>
  pressing(a) - pressing(b) || at(a) - at(b) || shownRank(a) - shownRank(b) || hand(a) - hand(b);

export interface ShownAircraft {
  readonly aircraft: FleetAircraft;
  /** Open lines, what bites first first. */
  readonly lines: readonly ShownLine[];
  /** The worst that is known, never softer than due where it was not computed. */
  readonly worst: directive.Standing;
  readonly settling: 'being computed' | 'not computed' | null;
}
export function shownAircraft(aircraft: FleetAircraft, today: Day): ShownAircraft {
  const all = aircraft.lines.map((l) => shownLine(l, aircraft, today));
  const lines = all.filter((s) => s.open).sort(bitesBefore);
  const waits = !aircraft.holds || aircraft.asOf === null;
  const settling = waits ? 'being computed' : aircraft.notComputed.length ? 'not computed' : null;
  const ranks = [...all.map(shownRank), ...(settling ? [rank('due')] : [])];
  const worst = WORST_FIRST[Math.min(...(ranks.length ? ranks : [rank('not affected')]))]!;
  return { aircraft, lines, worst, settling };
}
const first = (s: ShownAircraft): number => (s.lines[0] ? at(s.lines[0]) : FAR);
const waits = (s: ShownAircraft): number => (s.settling === 'being computed' ? 0 : 1);
/** What is not yet computed comes first, then overdue, due and soon due, then what bites first. */
export const worstAircraftFirst = (a: ShownAircraft, b: ShownAircraft): number =>
  waits(a) - waits(b) ||
  Math.min(rank(a.worst), rank('not yet due')) - Math.min(rank(b.worst), rank('not yet due')) ||
  first(a) - first(b) ||
  rank(a.worst) - rank(b.worst);

/** Left and right with the same answer are said once: "both inboard spars". */
export function partsSaid(lines: readonly ShownLine[], s: ShownLine): string {
  const key = (x: ShownLine) => JSON.stringify([x.line.directive, x.line.action, x.standing, x.line.treatAs.dueAt]);
  const bare = (x: ShownLine) => x.line.partName.replace(/^(left|right) /, '');
  if (hand(s) < 0) return s.line.partName;
  const other = lines.find(
    (x) => x !== s && hand(x) >= 0 && hand(x) !== hand(s) && bare(x) === bare(s) && key(x) === key(s),
  );
  return other ? `both ${bare(s)}s` : s.line.partName;
}

/** True where a paper is missing that could change the standing or the day. */
export const moves = (s: ShownLine): boolean =>
  s.line.hangsOn !== null && (unsettled(s) || (s.line.dates !== null && becomeWords(s) !== s.about));
/** The first of what is open that hangs on a missing paper. */
export const hangsOn = (s: ShownAircraft): ShownLine | undefined => s.lines.find(moves);
