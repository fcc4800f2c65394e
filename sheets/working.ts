import { type Bounds, type Day, hoursFromSeconds, isDay, type Step } from '../engine/index.ts';
import { day, moneyRange, number, range } from './display.ts';
import { ofWorking, raised, significant, type Units } from './measure.ts';
import type { ShownStep } from './model.ts';

const placesOf = (unit: string, v: number): number =>
  unit === 'h' ? 1 : Number.isInteger(v) ? 0 : Math.abs(v) < 10 ? 3 : 1;
/** Below a thousandth, and from ten millions on where it is no whole number, a power of ten says more than noughts. */
const wantsPower = (v: number): boolean =>
  v !== 0 && (Math.abs(v) < 0.001 || (Math.abs(v) >= 1e7 && !Number.isSafeInteger(v)));

/** `currency`: the word of the floor or shop for money, where the working holds cents. */
export function shownValue(
  value: number | Bounds | Day | string,
  unit: string,
  units: Units = 'mm',
  currency = '',
): string {
  if (typeof value === 'string') return isDay(value) ? day(value) : value;
  if (unit === 'cents') return `${moneyRange(value)} ${currency}`.trim();
  const inReader = (v: number) =>
    unit === 's' ? { value: hoursFromSeconds(v), unit: 'h' } : ofWorking(v, unit, units);
  if (typeof value === 'number') {
    const { value: v, unit: word } = inReader(value);
    const text = word !== 'h' && wantsPower(v) ? significant(v) : number(v, placesOf(word, v));
    return word ? `${text} ${word}` : text;
  }
  const [low, high] = [inReader(value.low), inReader(value.high)];
  const places = Math.max(placesOf(low.unit, low.value), placesOf(high.unit, high.value));
  const text =
    low.unit !== 'h' && (wantsPower(low.value) || wantsPower(high.value))
      ? `${significant(low.value)} to ${significant(high.value)}`
      : range({ low: low.value, high: high.value }, places);
  return low.unit ? `${text} ${low.unit}` : text;
}

/** "K^2" as "K²"; a power that is a letter or no whole number in words, as it is read out. */
export const spokenPowers = (formula: string): string =>
  formula.replace(
    /\^(\([^)]*\)|[−-]?[\w.]+)(?:( )(?=[A-ZΔΣσ([]))?/g,
    (_, power: string, follows?: string) =>
      `${/^\d+$/.test(power) ? raised(power) : ` to the power ${power}`}${follows ? ' · ' : ''}`,
  );

/** A step of the engine in the reader's units, with the source it rests on and how well that is known. */
export function shownStep(s: Step, units: Units = 'mm', currency = ''): ShownStep {
  const p = s.provenance;
  const source = [s.source, p && [p.source, p.edition, p.place, `(${p.known})`].filter(Boolean).join(', '), s.evidence]
    .filter(Boolean)
    .join('; ');
  return {
    symbol: s.symbol,
    meaning: spokenPowers(s.meaning),
    formula: spokenPowers(s.formula),
    value: shownValue(s.value, s.unit, units, currency),
    source,
    entries: s.entries ?? [],
  };
}
export const shownSteps = (steps: readonly Step[], units: Units = 'mm', currency = ''): ShownStep[] =>
  steps.map((s) => shownStep(s, units, currency));
