/** With scatter: how many hours, and how likely is it that a look comes too late? */
export { chanceFrom } from './chance.ts';
export { type Detection, detectedAt, LOG_ODDS_FROM, missedByAll, missOf } from './detection.ts';
export { livesOf } from './lives.ts';
export { type ChanceTask, chanceTask, prepareChance } from './prepare.ts';
export type { Lives, PreparedChance } from './problem.ts';
export { factorsOf, type LifeFactors } from './scatter.ts';
export { withChance } from './with-chance.ts';
