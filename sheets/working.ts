import { type Bounds, type Day, hoursFromSeconds, isDay, type Step } from '../engine/index.ts';
import { day, number, range } from './display.ts';
import type { ShownStep } from './model.ts';

const inReader = (v: number, unit: string): number => (unit === 's' ? hoursFromSeconds(v) : v);
const placesOf = (unit: string, v: number): number =>
  unit === 's' || unit === 'h' ? 1 : Number.isInteger(v) ? 0 : Math.abs(v) < 10 ? 3 : 1;

export function shownValue(value: number | Bounds | Day | string, unit: string): string {
  if (typeof value === 'string') return isDay(value) ? day(value) : value;
  const word = unit === 's' ? 'h' : unit;
  const text =
    typeof value === 'number'
      ? number(inReader(value, unit), placesOf(unit, value))
      : range(
          { low: inReader(value.low, unit), high: inReader(value.high, unit) },
          Math.max(placesOf(unit, value.low), placesOf(unit, value.high)),
        );
  return word ? `${text} ${word}` : text;
}

/** A step of the engine in the reader's units, with the source it rests on and how well that is known. */
export function shownStep(s: Step): ShownStep {
  const p = s.provenance;
  const source = [s.source, p && [p.source, p.edition, p.place, `(${p.known})`].filter(Boolean).join(', '), s.evidence]
    .filter(Boolean)
    .join('; ');
  return {
    symbol: s.symbol,
    meaning: s.meaning,
    formula: s.formula,
    value: shownValue(s.value, s.unit),
    source,
    entries: s.entries ?? [],
  };
}
export const shownSteps = (steps: readonly Step[]): ShownStep[] => steps.map(shownStep);
