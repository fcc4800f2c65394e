import { type Bounds, MM_PER_INCH, MPA_PER_KSI, MPA_SQRT_M_PER_KSI_SQRT_IN } from '../engine/index.ts';
import { number, range } from './display.ts';
import type { Cell } from './model.ts';

/** Lengths and stresses as the reader has chosen; the engine's are mm, MPa and MPa√m. */
export type Units = 'mm' | 'inch';
export type Measure = 'length' | 'stress' | 'toughness' | 'rate';
interface Shown {
  readonly unit: string;
  readonly per: number;
  readonly places: number;
}
const SHOWN: Readonly<Record<Units, Readonly<Record<Measure, Shown>>>> = {
  mm: {
    length: { unit: 'mm', per: 1, places: 2 },
    stress: { unit: 'MPa', per: 1, places: 0 },
    toughness: { unit: 'MPa√m', per: 1, places: 1 },
    rate: { unit: 'mm/cycle', per: 1, places: 3 },
  },
  inch: {
    length: { unit: 'in', per: MM_PER_INCH, places: 3 },
    stress: { unit: 'ksi', per: MPA_PER_KSI, places: 1 },
    toughness: { unit: 'ksi√in', per: MPA_SQRT_M_PER_KSI_SQRT_IN, places: 1 },
    rate: { unit: 'in/cycle', per: MM_PER_INCH, places: 3 },
  },
};
/** Units of the working that a reader may have in inches. */
const MEASURE_OF: Readonly<Record<string, Measure>> = {
  mm: 'length',
  MPa: 'stress',
  'MPa√m': 'toughness',
  'mm/cycle': 'rate',
};

export const unitOf = (measure: Measure, units: Units): string => SHOWN[units][measure].unit;
export const inUnits = (value: number, measure: Measure, units: Units): number => value / SHOWN[units][measure].per;
export const figureOf = (value: number, measure: Measure, units: Units): string =>
  number(inUnits(value, measure, units), SHOWN[units][measure].places);
/** "1.27 mm", "0.050 in" */
export const measured = (value: number, measure: Measure, units: Units): string =>
  `${figureOf(value, measure, units)} ${unitOf(measure, units)}`;

/** A figure of the working with its unit, both as the reader has chosen. */
export function ofWorking(
  value: number,
  unit: string,
  units: Units,
): { readonly value: number; readonly unit: string } {
  // Minutes of work are read in hours.
  if (unit === 'min') return { value: value / 60, unit: 'h' };
  const measure = MEASURE_OF[unit];
  return measure ? { value: inUnits(value, measure, units), unit: unitOf(measure, units) } : { value, unit };
}

const nothing: Cell = { is: 'nothing' };
const isWhole = (v: number | Bounds | null): v is number | Bounds =>
  v !== null && (typeof v === 'number' ? Number.isFinite(v) : Number.isFinite(v.low) && Number.isFinite(v.high));
export function quantity(value: number | Bounds | null, unit: string, places = 0): Cell {
  if (!isWhole(value)) return nothing;
  const text = typeof value === 'number' ? number(value, places) : range(value, places);
  return { is: 'quantity', value, unit, places, text };
}
export function measuredCell(value: number | null, measure: Measure, units: Units): Cell {
  if (value === null) return nothing;
  const { unit, places } = SHOWN[units][measure];
  return quantity(inUnits(value, measure, units), unit, places);
}
/** How many times one counts against another, a file holds it as a figure. */
export function timesCell(value: number | Bounds): Cell {
  if (!isWhole(value)) return nothing;
  const text = typeof value === 'number' ? timesFigure(value) : timesRange(value);
  return { is: 'quantity', value, unit: '', places: 3, text };
}
/** A figure that may be very small, with the places that a file needs to show it. */
export function smallCell(value: number | null, unit = ''): Cell {
  if (value === null || !Number.isFinite(value)) return nothing;
  const size = Math.abs(value);
  const places = size === 0 || size >= 100 ? 0 : Math.min(20, Math.max(0, 2 - Math.floor(Math.log10(size))));
  return { is: 'quantity', value, unit, places, text: significant(value) };
}
/** A share as per cent. */
export function percentCell(share: number | Bounds, text: string): Cell {
  if (!isWhole(share)) return nothing;
  const value = typeof share === 'number' ? 100 * share : { low: 100 * share.low, high: 100 * share.high };
  return { is: 'quantity', value, unit: '%', places: 3, text };
}
export const hoursCell = (value: number | Bounds | null, places = 0): Cell => quantity(value, 'h', places);
export const words = (text: string, small?: string): Cell => ({ is: 'text', text, ...(small ? { small } : {}) });

/** Between a figure and its power: never a new line. */
const NARROW = '\u202f';
/** Decimals in threes: "0.000 1". */
export function decimals(value: number, places: number): string {
  const [whole = '', part = ''] = number(value, places).split('.');
  return part ? `${whole}.${part.replace(/(\d{3})(?=\d)/g, `$1${NARROW}`)}` : whole;
}
/** "10⁸", in signs that the letters on screen and on paper have. */
const RAISED = '⁰¹²³⁴⁵⁶⁷⁸⁹';
export const raised = (digits: string): string => [...digits].map((d) => RAISED[Number(d)]).join('');
const MOST_DECIMALS = 15;
/** Three figures: "0.000 000 014 2", "1.42 × 10⁸"; what is smaller than decimals can say is one over a power: "1.42 / 10²⁰". */
export function significant(value: number): string {
  if (value === 0) return '0';
  const size = Math.abs(value);
  if (size >= 1e-3 && size < 1e7)
    return number(value, size >= 100 ? 0 : size >= 10 ? 1 : size >= 1 ? 2 : size >= 0.1 ? 3 : 4);
  const [mantissa = '', power = '0'] = value.toExponential(2).split('e');
  const places = 2 - Number(power);
  if (size < 1 && places <= MOST_DECIMALS) return decimals(value, places);
  const by = size < 1 ? '/' : '×';
  return `${mantissa.replace('-', '−')}${NARROW}${by}${NARROW}10${raised(power.replace(/[-+]/, ''))}`;
}
/** "1.7 times", "12 times": how many times one thing counts against another. */
export const timesFigure = (ratio: number): string =>
  number(ratio, ratio >= 10 ? 0 : ratio >= 0.1 || ratio === 0 ? 1 : 2);
export function timesRange(b: Bounds): string {
  const [low, high] = [timesFigure(b.low), timesFigure(b.high)];
  return low === high ? low : `${low} to ${high}`;
}
