import { type Day, dayNumber, type directive, hoursFromSeconds, type outlook, type record } from '../engine/index.ts';
import { arrival, arrivalNumber, capital, count, day, hours, landings, number, plain } from './display.ts';
import type { Cell, DueMark } from './model.ts';

export type Assessment = directive.Assessment;
/** What of an answer, whole or slim, its words are made of. */
export type EndTold = Pick<directive.EndOfAnswer, 'dueAt' | 'left'>;
export type Told = Pick<Assessment, 'notComputed' | 'standing' | 'day'> & { readonly treatAs: EndTold };
type Dates = Pick<outlook.Outlook, 'treatAs' | 'couldBecome'>;
export type Outlooks = ReadonlyMap<string, outlook.Outlook>;

/** From the worse side to the better. */
export const WORST_FIRST: readonly directive.Standing[] = [
  'overdue',
  'due',
  'soon due',
  'not yet due',
  'done and repeating',
  'not affected',
  'ended',
];
const ACT: readonly directive.Standing[] = ['overdue', 'due', 'soon due'];
export const rank = (s: directive.Standing): number => WORST_FIRST.indexOf(s);
/** What could not be computed is due, and no softer than what is known of it all the same. */
export const shownWorst = ({ notComputed, standing: { worst } }: Pick<Told, 'notComputed' | 'standing'>) =>
  notComputed !== null && worst !== 'overdue' ? 'due' : worst;
export const needsAct = (a: Told): boolean => a.notComputed !== null || ACT.includes(a.standing.worst);
export const isOpen = (a: Told): boolean =>
  a.notComputed !== null || !['ended', 'not affected'].includes(a.standing.worst);
export const keyOf = (a: Assessment): string => `${a.subject}|${a.directive}|${a.action.id}`;
export const unsettled = (a: Told): boolean => a.standing.worst !== a.standing.best;

export function partName(t: record.Thing | undefined, id = ''): string {
  if (!t) return id;
  return t.kind === 'aircraft' ? (t.attributes.registration?.value ?? t.id) : kindName(t);
}
/** A part by its kind and side alone. */
export const kindName = ({ hand, what }: Pick<record.Thing, 'hand' | 'what'>): string =>
  capital(`${hand === 'none' ? '' : `${hand} `}${plain(what)}`);
/** The part within a sentence. */
export const partInSentence = (t: record.Thing | undefined, id = ''): string => {
  if (t?.kind === 'aircraft') return partName(t);
  const name = partName(t, id);
  return `the ${name.charAt(0).toLowerCase()}${name.slice(1)}`;
};
export function identity(t: record.Thing | undefined): string {
  if (!t || t.kind === 'aircraft') return '';
  const mark = t.attributes.stamp ? `stamp ${t.attributes.stamp.value}` : t.attributes.serial?.value;
  const seen = t.identity === 'seen';
  if (mark) return seen ? mark : `${mark}, not seen on the aircraft`;
  if (seen) return 'no serial; seen';
  return `believed original to ${t.what === 'wing' ? 'the aircraft' : 'its wing'}, not seen`;
}

export function standingCell(a: Told): Cell {
  const { best } = a.standing;
  const shown = shownWorst(a);
  return {
    is: 'standing',
    worst: shown,
    best: a.notComputed ? 'due' : best,
    act: needsAct(a),
    text: !a.notComputed && unsettled(a) ? `treat as ${shown}` : shown,
    ...(a.notComputed
      ? { small: `not computed: ${a.notComputed}` }
      : unsettled(a)
        ? { small: `could become ${best}` }
        : {}),
  };
}

/** Beside a name in a picture, where room is short. */
export function shortIdentity(t: record.Thing | undefined): string {
  if (t?.identity !== 'seen') return 'not seen yet';
  const mark = t.attributes.stamp ? `stamp ${t.attributes.stamp.value}` : (t.attributes.serial?.value ?? 'seen');
  return mark.length > 22 ? `${mark.slice(0, 20)} ...` : mark;
}
/** The paper is there and tells the hours; only how they were flown it does not tell. */
export const withoutUse = (g: Pick<record.Gap, 'id'>): boolean => g.id.includes(':use:');
/** No paper at all: neither a use left out, nor shares of use on paper, nor a change between two readings, nor a count left out. */
export const withoutPaper = (g: Pick<record.Gap, 'id'>): boolean =>
  !/:split:|:landings:|[.][.]/.test(g.id) && !withoutUse(g);
export const noPaper = (l: record.Life | undefined): boolean => l?.gaps.some(withoutPaper) ?? false;

/** What is left, in what the reader counts: landings or hours of the aircraft, else days. Never its sign. */
export function leftWords(left: directive.Left): string {
  if (left.unit === 'days') return count(Math.abs(Math.floor(left.value)), 'day');
  const byLandings = left.landings !== null && (left.unit !== 'h' || left.hours_s === null);
  if (byLandings) return landings(Math.abs(left.landings!));
  if (left.hours_s !== null) return hours(Math.abs(left.hours_s));
  if (left.unit === 'h') return `${number(Math.abs(left.value), 1)} h`;
  return `${number(Math.abs(Math.floor(left.value)))} ${left.unit}`;
}
export function dueWords(end: EndTold): string {
  const { dueAt, left } = end;
  if (dueAt.now) return 'before further flight';
  const hoursFirst = left?.unit === 'h' || dueAt.landings === null;
  if (dueAt.total_s !== null && hoursFirst && left?.unit !== 'days') return hoursDue(dueAt.total_s);
  if (dueAt.landings !== null && left?.unit !== 'days') return landingsDue(dueAt.landings);
  const read = reading(end);
  if (!dueAt.day || read === BEFORE_PAPERS) return read;
  return read ? `${read} or ${day(dueAt.day)}, whichever comes first` : day(dueAt.day);
}
/** The same within a sentence: "at 5 118 landings", "on 14 Nov 2026", "before further flight". */
export function dueAtWords(end: EndTold): string {
  const words = dueWords(end);
  if (!words || words.startsWith('before ')) return words;
  return `${end.dueAt.day && !reading(end) ? 'on' : 'at'} ${words}`;
}
/** Where the worse side lies at the very beginning of the meter or before it: no reading tells when. */
export const BEFORE_PAPERS = 'before the papers begin';
const hoursDue = (total_s: number): string => (hoursFromSeconds(total_s) < 0.05 ? BEFORE_PAPERS : hours(total_s));
const landingsDue = (n: number): string => (n < 1 ? BEFORE_PAPERS : landings(n));
/** The reading of the aircraft at which it falls due, if one does. */
export function reading({ dueAt, left }: EndTold): string {
  const { total_s, landings: n } = dueAt;
  const byHours = total_s !== null && (n === null || left?.unit === 'h' || left?.unit === 'days');
  return byHours ? hoursDue(total_s) : n !== null ? landingsDue(n) : '';
}
/** Due now, whatever the forecast says of the limit: a directive that acts on a missing paper, or one not computed. */
export const atOnce = (a: Told): boolean =>
  a.notComputed !== null || a.treatAs.dueAt.now || a.standing.worst === 'overdue' || a.standing.worst === 'due';
/** Outlooks as they may be shown: what is due now is reached, at every rate. */
export function shownOutlooks(all: readonly Assessment[], outlooks: Outlooks): Outlooks {
  const out = new Map(outlooks);
  for (const a of all) {
    const o = out.get(keyOf(a));
    if (!o || !isOpen(a) || !atOnce(a)) continue;
    const now: outlook.Arrival = { is: 'reached', day: a.day };
    out.set(keyOf(a), {
      ...o,
      treatAs: { p10: now, p50: now, p90: now },
      atRates: o.atRates.map((r) => ({ ...r, treatAs: now })),
    });
  }
  return out;
}
const HANDS = ['left', 'right', 'none'];
/** Left before right, wherever nothing else decides. */
export const handed = (all: readonly Assessment[], things: ReadonlyMap<string, record.Thing>): Assessment[] =>
  [...all].sort(
    (a, b) =>
      HANDS.indexOf(things.get(a.subject)?.hand ?? 'none') - HANDS.indexOf(things.get(b.subject)?.hand ?? 'none'),
  );
export function aboutWords(a: Told, o: Dates | undefined, today: Day): string {
  if (!isOpen(a)) return '';
  if (atOnce(a)) return 'now';
  if (o) return arrival(o.treatAs.p50, today);
  return a.treatAs.dueAt.now ? 'now' : a.treatAs.dueAt.day ? day(a.treatAs.dueAt.day) : '';
}

const whenOf = (a: Assessment, outlooks: Outlooks): number => {
  const o = outlooks.get(keyOf(a));
  if (atOnce(a)) return dayNumber(a.day);
  if (o) return arrivalNumber(o.treatAs.p50, a.day);
  return a.treatAs.dueAt.day ? dayNumber(a.treatAs.dueAt.day) : Number.POSITIVE_INFINITY;
};
export const shownRank = (a: Told): number => rank(shownWorst(a));
/** Worse standings first, then what falls due first. */
export const worstFirst = (all: readonly Assessment[], outlooks: Outlooks): Assessment[] =>
  [...all].sort((a, b) => shownRank(a) - shownRank(b) || whenOf(a, outlooks) - whenOf(b, outlooks));
/** What bites first, whichever directive: overdue and due before all, then by the day of the worse side. */
export function bitesFirst(all: readonly Assessment[], outlooks: Outlooks): Assessment[] {
  const now = (a: Assessment) => Math.min(shownRank(a), rank('soon due'));
  return all
    .filter(isOpen)
    .sort((a, b) => now(a) - now(b) || whenOf(a, outlooks) - whenOf(b, outlooks) || shownRank(a) - shownRank(b));
}

const TEN_YEARS_DAYS = 3652.5;
/** The next ten years: a tick where the worse side falls due, a range where papers could move it. */
export function dueLine(a: Told, o: Dates | undefined, today: Day): Cell {
  if (!isOpen(a)) return { is: 'nothing' };
  const at = (x: outlook.Arrival) =>
    Math.min(1, Math.max(0, (arrivalNumber(x, today) - dayNumber(today)) / TEN_YEARS_DAYS));
  const marks: DueMark[] = [];
  if (a.standing.worst === 'overdue') marks.push({ kind: 'overdue', from: 0, to: 0, treatAs: true });
  else if (o) marks.push({ kind: 'tick', from: at(o.treatAs.p50), to: at(o.treatAs.p50), treatAs: true });
  else if (a.treatAs.dueAt.now || a.notComputed) marks.push({ kind: 'tick', from: 0, to: 0, treatAs: true });
  if (o && !a.notComputed)
    marks.push({ kind: 'range', from: at(o.treatAs.p10), to: at(o.couldBecome.p90), treatAs: false });
  if (!marks.length) return { is: 'nothing' };
  return { is: 'due-line', marks, text: aboutWords(a, o, today) || a.standing.worst };
}
