/** With scatter: how many hours, and how likely is it that a look comes too late? */
export { chanceFrom } from './chance.ts';
export { missOf } from './detection.ts';
export { livesOf } from './lives.ts';
export { type ChanceTask, chanceTask, prepareChance } from './prepare.ts';
export type { Lives } from './problem.ts';
export { factorsOf } from './scatter.ts';
export { withChance } from './with-chance.ts';
