import type { growth } from '../../engine/index.ts';
import { number, plain, uncapital } from '../display.ts';
import { measured, type Units } from '../measure.ts';

export const ENDS: Readonly<Record<growth.CriticalSize['by'], string>> = {
  fracture: 'it breaks at limit load',
  'net section yield': 'what is left of the section yields at limit load',
  ligament: 'the ligament ends',
};
export const LAW_WORDS: Readonly<Record<string, string>> = {
  paris: 'Paris',
  walker: 'Walker',
  forman: 'Forman',
  closure: 'Forman, Newman and de Koning, with closure',
};
export const INTERACTIONS = { none: 'none', wheeler: 'Wheeler', willenborg: 'generalised Willenborg' } as const;

/** "1.27 mm", or "1.27 mm long and 0.80 mm deep" */
export function sizeWords(size: growth.CrackSize, units: Units): string {
  const long = measured(size.c_mm, 'length', units);
  if (size.a_mm === undefined) return long;
  const deep = measured(size.a_mm, 'length', units);
  return deep === long ? `${long} long and deep` : `${long} long and ${deep} deep`;
}
export function shareWords(share: number): string {
  if (Math.abs(share - 1 / 2) < 1e-9) return 'half';
  if (Math.abs(share - 1 / 3) < 1e-9) return 'a third';
  return `${Math.round(100 * share)} %`;
}
export function ruleWords(rule: growth.GrowthAnswer['rule']): string {
  const [first, repeat] = [shareWords(rule.first), shareWords(rule.repeat)];
  return first === repeat ? `${first} of the growth` : `first ${first}, then ${repeat} of the growth`;
}
/** A use by its title, or by its word where it has none: as a name at the head of a row. */
export const titleOfUse = (a: growth.GrowthAnswer, use: string): string =>
  a.byUse.find((u) => u.use === use)?.title ?? plain(use);
/** The same in the middle of a sentence: "glider towing", "tow flying". */
export const saidUse = (a: growth.GrowthAnswer, use: string): string => {
  const title = a.byUse.find((u) => u.use === use)?.title;
  return title ? uncapital(title) : `${plain(use)} flying`;
};
export const shareOfLives = (share: number): string => `${Math.round(1000 * share) / 10} in 100`;
/** A small chance keeps its figures. */
export const percent = (share: number): string =>
  `${number(100 * share, share > 0 && share < 0.001 ? 3 : share < 0.1 ? 2 : 1)} %`;
