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
  'region.variable-unbounded',
  'region.variable-empty',
  'region.term-invalid',
  'region.impossible',
  'region.unsolved',
  'expression.syntax',
  'expression.not-allowed',
  'expression.unknown-fact',
  'expression.not-a-number',
  'expression.not-a-condition',
  'expression.too-large',
  'expression.fact-missing',
  'expression.not-finite',
  'expression.divides-by-zero',
  'expression.forecast-invalid',
  'outlook.no-reading',
  'outlook.reading-in-future',
  'outlook.readings-run-backwards',
  'outlook.too-much-flown',
  'outlook.limit-missing',
  'outlook.prior-invalid',
  'outlook.rate-invalid',
] as const;

export type RefusalCode = (typeof REFUSAL_CODES)[number];
