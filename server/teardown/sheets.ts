import {
  cardsSheet,
  quoteSheet,
  type Sheet,
  scheduleSheet,
  shoppingSheet,
  type TeardownSheetInput,
  teardownSheet,
} from '../../sheets/index.ts';

/** The pages of a job. */
export const JOB_PAGES = ['plan', 'schedule', 'shopping', 'quote', 'cards'] as const;
export type JobPage = (typeof JOB_PAGES)[number];
export const SHEETS: Readonly<Record<JobPage, (q: TeardownSheetInput) => Sheet>> = {
  plan: teardownSheet,
  schedule: scheduleSheet,
  shopping: shoppingSheet,
  quote: quoteSheet,
  cards: cardsSheet,
};
