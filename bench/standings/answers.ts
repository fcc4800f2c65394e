import { writeFileSync } from 'node:fs';
import { directive } from '../../engine/index.ts';

/** One answer as eight whole numbers: standing, due at (total in seconds, landings, day), at the worse and the better end. */
export const WIDTH = 8;
export const RULES_PER_THING = 11;
const THINGS = 3;
export const NONE = -2_000_000_000;

/** Answers of a fleet in a fixed order, so that contenders are compared figure by figure. */
export class Answers {
  readonly figures: Int32Array;
  count = 0;
  constructor(aircraft: number) {
    this.figures = new Int32Array(aircraft * THINGS * RULES_PER_THING * WIDTH).fill(NONE);
  }
  put(aircraft: number, thing: number, rule: number, figures: readonly number[]): void {
    this.figures.set(figures, ((aircraft * THINGS + thing) * RULES_PER_THING + rule) * WIDTH);
    this.count++;
  }
  keep(file: string): void {
    writeFileSync(file, new Uint8Array(this.figures.buffer));
  }
}
export const aircraftNumber = (id: string): number => Number(id.slice(id.indexOf(':') + 1).slice(0, 6));
/** 0 the aircraft, 1 the left spar, 2 the right one. */
export const thingNumber = (id: string): number => (id.startsWith('aircraft') ? 0 : id.endsWith('L') ? 1 : 2);
export const ruleNumber = (number: string): number => Number(number.slice(2)) - 1;
export const standingNumber = (s: directive.Standing): number => directive.STANDINGS.indexOf(s);
