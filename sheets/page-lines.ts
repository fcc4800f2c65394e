import { hoursFromSeconds } from '../engine/index.ts';
import { count, datesInWords, number } from './display.ts';

/** A typed row of a paper logbook, as it was understood: words for the person who types. */
export interface ShownLine {
  readonly row: number;
  readonly day: string;
  /** What stood before and what the row adds. */
  readonly sum: string;
  readonly sumLandings: string;
  /** A slip of the book, in words; it may be kept, as the declared total stands. */
  readonly slips: readonly string[];
  /** Why the row cannot be written as it is. */
  readonly reason: string;
  readonly warnings: readonly string[];
}
interface Sum {
  readonly sum: number | null;
  readonly slip: number | null;
}
interface Line {
  readonly row: number;
  readonly day?: string | undefined;
  readonly total_s?: number | undefined;
  readonly landings_total?: number | undefined;
  readonly hours: Sum;
  readonly landings: Sum;
  readonly reason?: string | undefined;
  readonly warnings: readonly string[];
}

const hoursWords = (seconds: number): string => number(hoursFromSeconds(seconds), seconds % 360 === 0 ? 1 : 2);
/** "the book says 1 204.3, the rows add up to 1 203.3: 1.0 h less" */
const slipWords = (
  says: number | undefined,
  { sum, slip }: Sum,
  words: (n: number) => string,
  unit: string,
): string[] =>
  slip === null || sum === null || says === undefined
    ? []
    : [
        `the book says ${words(says)}, the rows add up to ${words(sum)}: ${words(Math.abs(slip))}${unit} ${slip > 0 ? 'less' : 'more'}`,
      ];

export const shownLine = (l: Line): ShownLine => ({
  row: l.row,
  day: l.day ? datesInWords(l.day) : '',
  sum: l.hours.sum === null ? '' : hoursWords(l.hours.sum),
  sumLandings: l.landings.sum === null ? '' : number(l.landings.sum),
  slips: [
    ...slipWords(l.total_s, l.hours, hoursWords, ' h'),
    ...slipWords(l.landings_total, l.landings, (n) => number(n), ' landings'),
  ],
  reason: l.reason ? datesInWords(l.reason) : '',
  warnings: l.warnings.map(datesInWords),
});
/** "1 Mar 2009 to 31 Aug 2011: volume 3 is lost" */
export const gapWords = (g: { from: string; to: string; because: string }): string =>
  datesInWords(`${g.from} to ${g.to}: ${g.because}`);
/** "1 200.0 h and 2 000 landings, as of 3 Mar 2010" */
export function broughtWords(q: { total_s: number | null; landings: number | null; day: string | null }): string {
  const parts = [
    q.total_s === null ? '' : `${hoursWords(q.total_s)} h`,
    q.landings === null ? '' : count(q.landings, 'landing'),
  ].filter(Boolean);
  if (!parts.length) return 'nothing is read before these rows';
  return `${parts.join(' and ')}${q.day ? `, as of ${datesInWords(q.day)}` : ''}`;
}
