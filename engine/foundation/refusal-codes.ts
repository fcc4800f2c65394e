/**
 * Every refusal the program can make, in one list: documented, answered and tested from here.
 * The word before the dot is the room that refuses.
 */
export const REFUSAL_CODES = [
  'foundation.not-finite',
  'foundation.not-whole',
  'foundation.not-hours',
  'foundation.not-a-day',
  'foundation.bounds-reversed',
  'foundation.document-invalid',
  'foundation.unknown-version',
] as const;

export type RefusalCode = (typeof REFUSAL_CODES)[number];
