import type { Day, record } from '../engine/index.ts';
import { day as dayWords, yearsOf } from './display.ts';
import { partInSentence } from './standing.ts';

const spoken = (word: string): string => word.replaceAll('_', ' ');

/** How each question begins the sentence that answers it. */
export const whatIfWords = {
  rate: (rate: number): string => `If it flew ${rate} h a year from the last reading on`,
  use: (use: string, from: Day, later: boolean): string =>
    later
      ? `If it flew ${spoken(use)} only from ${dayWords(from)} on (the harder of today’s flying and ${spoken(use)} counts)`
      : `If it flew ${spoken(use)} only since ${dayWords(from)}`,
  moved: (id: string, part: record.Thing | undefined, to: string): string =>
    `If ${partInSentence(part, id)} moved to ${to === 'shelf' ? 'the shelf' : 'another aircraft'}`,
  paper: (gap: record.Gap, use: string | undefined): string =>
    `If the paper of ${yearsOf(gap)} turned up${use ? ` and said ${spoken(use)}` : ''}`,
  gap: (gap: record.Gap): string => `${yearsOf(gap)}: ${gap.because}`,
};
