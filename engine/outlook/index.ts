/** When will it bite? The owner's flying rate from readings, and the day on which a limit is reached. */
export { answerOutlook, type OutlookAnswer } from './answer.ts';
export { normalCdf } from './distributions.ts';
export { type OutlookDocument, type OutlookDocumentInput, zOutlookDocument } from './document.ts';
export { type Flying, readFlying } from './flying.ts';
export type { TotalReading } from './intervals.ts';
export type {
  Arrival,
  AtRate,
  LeftAtEnd,
  Outlook,
  OutlookOptions,
  Percentiles,
  RateFound,
  ReadingAge,
  TodayEstimate,
} from './model.ts';
export { outlook, outlookOf } from './outlook.ts';
export { DEFAULT_PRIOR, HORIZON_YEARS, PRIOR_PROVENANCE, type Prior } from './prior.ts';
export { estimateToday, readingAge, STALE_AFTER_DAYS } from './today.ts';
export { earlierArrival, laterArrival } from './when.ts';
