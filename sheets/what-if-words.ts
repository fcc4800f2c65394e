import type { Day, record } from '../engine/index.ts';
import { day as dayWords, yearsOf } from './display.ts';

const spoken = (word: string): string => word.replaceAll('_', ' ');

interface Moving {
  readonly hand: string;
  readonly part: string;
}
const called = ({ hand, part }: Moving): string => `the ${hand === 'none' ? '' : `${hand} `}${spoken(part)}`;
/** Where a part goes that is fitted nowhere. */
export const SHELF = 'the shelf';
/** How each question begins the sentence that answers it. */
export const whatIfWords = {
  rate: (rate: number): string => `If it flew ${rate} h a year from the last reading on`,
  use: (use: string, from: Day, later: boolean): string =>
    later
      ? `If it flew ${spoken(use)} only from ${dayWords(from)} on (the harder of today’s flying and ${spoken(use)} counts)`
      : `If it flew ${spoken(use)} only since ${dayWords(from)}`,
  /** To an aircraft by its registration, or to the shelf. */
  moved: (part: Moving, to: string): string => `If ${called(part)} moved to ${to}`,
  staying: (part: Moving, to: string): string =>
    `As ${called(part)} ${to === SHELF ? `lies on ${to}` : `sits in ${to}`} already`,
  paper: (gap: record.Gap, use: string | undefined): string =>
    `If the paper of ${yearsOf(gap)} turned up${use ? ` and said ${spoken(use)}` : ''}`,
  gap: (gap: record.Gap): string => `${yearsOf(gap)}: ${gap.because}`,
};
