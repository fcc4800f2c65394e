import type { usage } from '../../engine/index.ts';
import { plain, uncapital } from '../display.ts';

/** What loads the wing, as a page says it. */
export const LOAD_WORDS: Readonly<Record<usage.LoadSource, string>> = {
  gust: 'gusts',
  manoeuvre: 'manoeuvres',
  taxi: 'taxying',
  landing: 'landings',
  ground_air_ground: 'ground-air-ground',
};
export const LOADS: readonly usage.LoadSource[] = ['gust', 'manoeuvre', 'taxi', 'landing', 'ground_air_ground'];

type Answer = usage.UsageAnswer;
/** A use by its title in the middle of a sentence; one without a title by its word. */
export function saidUse(answer: Answer, use: string): string {
  return uncapital(titleOfUse(answer, use));
}
export const titleOfUse = (answer: Answer, use: string): string =>
  answer.uses.find((u) => u.use === use)?.title ?? plain(use);
