import { type Bounds, type Day, type directive, hoursFromSeconds } from '../../engine/index.ts';
import { alternativeWords } from '../approval-words.ts';
import { day as dayWords, number, plain, range } from '../display.ts';
import type { Cell } from '../model.ts';
import { type Assessment, aboutWords, isOpen, keyOf, type Outlooks, reading } from '../standing.ts';

export const NOTHING: Cell = { is: 'nothing' };
export const text = (words: string, small = ''): Cell =>
  words ? { is: 'text', text: words, ...(small ? { small } : {}) } : small ? { is: 'text', text: '', small } : NOTHING;
export const day = (d: Day | null | undefined): Cell => (d ? { is: 'day', day: d, text: dayWords(d) } : NOTHING);
export const quantity = (b: Bounds | null, unit: string, places: number): Cell => {
  if (!b) return NOTHING;
  const value = b.low === b.high ? b.low : b;
  return { is: 'quantity', value, unit, places, text: range(b, places) };
};
type Done = directive.DoneLine;

const hoursOf = (b: Bounds | null): Bounds | null =>
  b && { low: hoursFromSeconds(Math.round(b.low)), high: hoursFromSeconds(Math.round(b.high)) };
export const hoursThen = (d: Done | undefined): Cell => quantity(d ? hoursOf(d.reading.total_s) : null, 'h', 1);
export const landingsThen = (d: Done | undefined): Cell => quantity(d?.reading.landings ?? null, 'landings', 0);
/** Where the reading at accomplishment comes from: the entry, or the record of that day. */
export function basisOf(d: Done | undefined): string {
  if (!d) return '';
  const { stated, total_s, landings } = d.reading;
  if (stated.total && (stated.landings || !landings)) return 'as written';
  if (!total_s && !landings) return 'no reading on paper';
  return stated.total || stated.landings ? 'as written; the rest computed from the record' : 'computed from the record';
}
export function readingThen(d: Done | undefined): Cell {
  const h = hoursThen(d);
  const n = landingsThen(d);
  const words = [h.is === 'quantity' ? `${h.text} h` : '', n.is === 'quantity' ? `${n.text} landings` : ''];
  return text(words.filter(Boolean).join(', '), basisOf(d));
}
export const findingWords = (finding: string): string =>
  finding === 'none' ? 'nothing found' : `found: ${plain(finding)}`;
export const signerOf = (d: Done | undefined): Cell =>
  d
    ? d.signer
      ? text(d.signer.name, d.signer.certificate ?? 'no certificate number on record')
      : text('no signer on record')
    : NOTHING;
export const paperOf = (d: Done | undefined): string =>
  d?.paper
    ? [d.paper.title, d.paper.page && `page ${d.paper.page}`, d.paper.row && `line ${d.paper.row}`]
        .filter(Boolean)
        .join(', ')
    : d
      ? 'no paper named'
      : '';

/** What stands where work would: it is asked for and not on record, or not asked for yet. */
export const missingWords = (l: directive.ComplianceLine): string =>
  l.wanted ? 'not on record' : isOpen(l.assessment) ? 'none yet' : '';
/** The work that counts, newest first; where none does, the newest that is alleged. */
export const doneOf = (l: directive.ComplianceLine): Done | undefined =>
  l.done.find((d) => d.doubt === null) ?? l.done[0];

/** How it was complied with: the method of the work, or what took its place. */
export function methodOf(l: directive.ComplianceLine): string {
  const a = l.assessment;
  if (a.standing.worst === 'ended' && a.alternative) return alternativeWords(a);
  const d = doneOf(l);
  return d ? (d.method ?? 'no method on record') : missingWords(l);
}
export const affectedWords = (a: Assessment): string =>
  !a.affected.yes ? `not affected: ${a.affected.because}` : `affected: ${a.affected.because}`;

/** The next reading at which it is due. */
export function nextReading(a: Assessment): string {
  if (!isOpen(a)) return '';
  if (a.treatAs.dueAt.now || a.notComputed) return 'before further flight';
  return reading(a.treatAs);
}
/** The next date: the day of a calendar limit, else about when the reading comes. */
export function nextDate(a: Assessment, outlooks: Outlooks, today: Day): Cell {
  if (!isOpen(a)) return NOTHING;
  const { dueAt } = a.treatAs;
  if (dueAt.day && !dueAt.now) return day(dueAt.day);
  const about = aboutWords(a, outlooks.get(keyOf(a)), today);
  return text(about, about && about !== 'now' ? 'at today’s flying' : '');
}
const FERRY = { allowed: 'allowed', limited: 'limited', forbidden: 'forbidden', 'not stated': 'not stated' } as const;
export const ferryWords = (a: Assessment): string => (isOpen(a) ? FERRY[a.ferry] : '');
export const extendsWords = (h: number | string | null): string =>
  h === null ? '' : `moves the limits by ${number(Number(h), 0)} h`;
