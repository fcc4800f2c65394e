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
  /** The same as a number, for sorting: without end where nothing tells. */
  readonly at: number;
  readonly about: string;
}

const FAR = Number.POSITIVE_INFINITY;
const dayOfArrival = (a: outlook.Arrival, today: Day): Day =>
  a.is === 'not before' ? (`${a.year}-07-01` as Day) : a.is === 'reached' || a.day < today ? today : a.day;

function shownLine(line: FleetLine, aircraft: FleetAircraft, today: Day): ShownLine {
  const on = directive.standingOn(line, today);
  const told: Told = {
    notComputed: line.notComputed ? 'it could not be computed' : null,
    standing: line.notComputed ? { worst: on.worst === 'overdue' ? 'overdue' : 'due', best: 'due' } : on,
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
  return {
    ...told,
    line,
    aircraft,
    open,
    when,
    at: when === null ? FAR : dayNumber(when),
    get about() {
      return aboutWords(told, dates, today);
    },
  };
}

/** Where the whole range of a line lies: flying from the worse side, papers to the better. */
export function rangeOf(s: ShownLine): { from: number; to: number } | null {
  const d = s.line.dates;
  if (!d || s.when === null || s.notComputed) return null;
  return {
    from: Math.min(s.at, arrivalNumber(d.treatAs.p10, s.day)),
    to: Math.max(s.at, arrivalNumber(d.couldBecome.p90, s.day)),
  };
}
export const p10Words = (s: ShownLine): string =>
  !s.open || atOnce(s) || !s.line.dates ? '' : arrival(s.line.dates.treatAs.p10, s.day);
export const becomeWords = (s: ShownLine): string =>
  s.line.dates && !s.notComputed ? arrival(s.line.dates.couldBecome.p50, s.day) : '';

const pressing = (s: ShownLine): number => Math.min(shownRank(s), rank('soon due'));
const HANDS = ['left', 'right'];
const hand = (s: ShownLine): number => HANDS.findIndex((h) => s.line.partName.startsWith(h));
/** Two that have no end are alike: their difference would be no number. */
const later = (a: number, b: number): number => (a === b ? 0 : a - b);
const byName = (a: ShownLine, b: ShownLine): number => {
  const [one, other] = [a.aircraft.registration, b.aircraft.registration];
  return one < other ? -1 : one > other ? 1 : 0;
};
/** Overdue and due before all, then by the day of the worse side, one aircraft after the other, left before right. */
export const bitesBefore = (a: ShownLine, b: ShownLine): number =>
  pressing(a) - pressing(b) || later(a.at, b.at) || shownRank(a) - shownRank(b) || byName(a, b) || hand(a) - hand(b);

export interface ShownAircraft {
  readonly aircraft: FleetAircraft;
  /** Open lines, what bites first first. */
  readonly lines: readonly ShownLine[];
  /** The worst that is known, never softer than due where it was not computed. */
  readonly worst: directive.Standing;
  readonly settling: 'being computed' | 'not computed' | null;
}
const shown = new WeakMap<FleetAircraft, ShownAircraft & { readonly day: Day }>();
/** Made once for an aircraft and a day: most of a large fleet is the same from one look to the next. */
export function shownAircraft(aircraft: FleetAircraft, day: Day): ShownAircraft {
  const known = shown.get(aircraft);
  if (known?.day === day) return known;
  const made = { ...show(aircraft, day), day };
  shown.set(aircraft, made);
  return made;
}
function show(aircraft: FleetAircraft, today: Day): ShownAircraft {
  const all = aircraft.lines.map((l) => shownLine(l, aircraft, today));
  const lines = all.filter((s) => s.open).sort(bitesBefore);
  const waits = !aircraft.holds || aircraft.asOf === null;
  const settling = waits ? 'being computed' : aircraft.notComputed.length ? 'not computed' : null;
  const ranks = [...all.map(shownRank), ...(settling ? [rank('due')] : [])];
  const worst = WORST_FIRST[Math.min(...(ranks.length ? ranks : [rank('not affected')]))]!;
  return { aircraft, lines, worst, settling };
}
const first = (s: ShownAircraft): number => s.lines[0]?.at ?? FAR;
const waits = (s: ShownAircraft): number => (s.settling === 'being computed' ? 0 : 1);
/** What is not yet computed comes first, then overdue, due and soon due, then what bites first. */
export const worstAircraftFirst = (a: ShownAircraft, b: ShownAircraft): number =>
  waits(a) - waits(b) ||
  Math.min(rank(a.worst), rank('not yet due')) - Math.min(rank(b.worst), rank('not yet due')) ||
  later(first(a), first(b)) ||
  rank(a.worst) - rank(b.worst);

const same = (a: ShownLine, b: ShownLine): boolean =>
  a.line.directive === b.line.directive &&
  a.line.action === b.line.action &&
  a.standing.worst === b.standing.worst &&
  a.standing.best === b.standing.best &&
  JSON.stringify(a.line.treatAs.dueAt) === JSON.stringify(b.line.treatAs.dueAt);
/** Left and right with the same answer are said once: "both inboard spars". */
export function partsSaid(lines: readonly ShownLine[], s: ShownLine): string {
  const bare = (x: ShownLine) => x.line.partName.replace(/^(left|right) /, '');
  if (hand(s) < 0) return s.line.partName;
  const other = lines.find((x) => x !== s && hand(x) >= 0 && hand(x) !== hand(s) && bare(x) === bare(s) && same(x, s));
  return other ? `both ${bare(s)}s` : s.line.partName;
}

/** True where a paper is missing that could change the standing or the day. */
export const moves = (s: ShownLine): boolean =>
  s.line.hangsOn !== null && (unsettled(s) || (s.line.dates !== null && becomeWords(s) !== s.about));
/** The first of what is open that hangs on a missing paper. */
export const hangsOn = (s: ShownAircraft): ShownLine | undefined => s.lines.find(moves);
