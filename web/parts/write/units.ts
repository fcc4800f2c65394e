import { useSyncExternalStore } from 'react';
import type { Units } from '../../../sheets/measure.ts';
import { isList, isTable, type Json, type Table } from './json.ts';

export type { Units };

/** Ends of field names that stand for the same figure: metric first, then inch. Longest first. */
const ENDS: readonly (readonly [metric: string, inch: string])[] = [
  ['_g_per_m_per_s', '_g_per_ft_per_s'],
  ['_kg_per_m3', '_slug_per_ft3'],
  ['_MPa_sqrt_m', '_ksi_sqrt_in'],
  ['_m_per_s', '_ft_per_s'],
  ['_MPa', '_ksi'],
  ['_mm', '_in'],
  ['_Pa', '_psf'],
  ['_m', '_ft'],
];
/** Further names of a metric end, in which nothing is asked but a document may say it. */
const ALSO: Readonly<Record<string, readonly string[]>> = { _m_per_s: ['_kt'], _MPa: ['_psi'] };
const WORDS: Readonly<Record<string, string>> = {
  _g_per_m_per_s: 'g per m/s',
  _g_per_ft_per_s: 'g per ft/s',
  _kg_per_m3: 'kg/m³',
  _slug_per_ft3: 'slug/ft³',
  _MPa_sqrt_m: 'MPa√m',
  _ksi_sqrt_in: 'ksi√in',
  _m_per_s: 'm/s',
  _ft_per_s: 'ft/s',
  _kt: 'kt',
  _MPa: 'MPa',
  _ksi: 'ksi',
  _psi: 'psi',
  _mm: 'mm',
  _in: 'in',
  _Pa: 'Pa',
  _psf: 'psf',
  _m: 'm',
  _ft: 'ft',
};
const pairOf = (field: string, side: 0 | 1) => ENDS.find((p) => field.endsWith(p[side]));

/** `width_mm` for an inch reader: `width_in`. */
export function nameIn(field: string, units: Units): string {
  const pair = pairOf(field, 0);
  return pair && units === 'inch' ? field.slice(0, -pair[0].length) + pair[1] : field;
}
/** All names that the figure of `width_mm` may stand under. */
export function namesOf(field: string): readonly string[] {
  const pair = pairOf(field, 0);
  if (!pair) return [field];
  const stem = field.slice(0, -pair[0].length);
  return [pair[0], pair[1], ...(ALSO[pair[0]] ?? [])].map((end) => stem + end);
}
/** The unit at the end of a field name, as a person writes it. */
export const unitWord = (field: string): string => {
  const end = Object.keys(WORDS).find((e) => field.endsWith(e));
  return end ? WORDS[end]! : '';
};
/** The name under which a figure stands in a table; if it stands there under none, the name to write it under. */
export const standsAs = (table: Table, field: string, otherwise: string): string =>
  namesOf(field).find((n) => table[n] !== undefined) ?? otherwise;

/** A constant of a handbook that is always written in the handbook's unit. */
const FIXED = /^a4_/;
/** Lengths and stresses, the figures that the choice of units is about: their ends in the units that were not chosen. */
const other = (units: Units): ReadonlyMap<string, string> =>
  new Map(
    ENDS.filter(([m]) => m === '_mm' || m === '_MPa' || m === '_MPa_sqrt_m').map(([m, i]) =>
      units === 'inch' ? [m, i] : [i, m],
    ),
  );
/** Rows of figures; of a million of them the first tells for all. */
const isRows = (v: Json): boolean => isList(v) && v.length > 0 && (typeof v[0] === 'number' || isRows(v[0]!));
const isFigures = (v: Json): boolean => typeof v === 'number' || isRows(v);
const figuresIn = (v: Json): number => (isList(v) ? v.length * figuresIn(v[0]!) : 1);
/** How many lengths and stresses stand in the units that were not chosen. */
export function inOtherUnits(document: Json | undefined, units: Units): number {
  const ends = [...other(units).keys()];
  const count = (v: Json | undefined): number => {
    if (isList(v)) return isRows(v) ? 0 : v.reduce<number>((n, x) => n + count(x), 0);
    if (!isTable(v)) return 0;
    return Object.entries(v).reduce(
      (n, [key, x]) =>
        n + (isFigures(x) && !FIXED.test(key) && ends.some((e) => key.endsWith(e)) ? figuresIn(x) : count(x)),
      0,
    );
  };
  return count(document);
}
/** The same figures, read as being in the units that were chosen: nothing is converted, only named otherwise. */
export function readAs(document: Json, units: Units): Json {
  const ends = [...other(units)];
  if (isRows(document)) return document;
  if (isList(document)) return document.map((x) => readAs(x, units));
  if (!isTable(document)) return document;
  return Object.fromEntries(
    Object.entries(document).map(([key, x]) => {
      const pair = isFigures(x) && !FIXED.test(key) ? ends.find(([e]) => key.endsWith(e)) : undefined;
      return pair ? [key.slice(0, -pair[0].length) + pair[1], x] : [key, readAs(x, units)];
    }),
  );
}

const KEY = 'sparwright.units';
const listeners = new Set<() => void>();
let here: Units | undefined;
function kept(): Units {
  try {
    here ??= localStorage.getItem(KEY) === 'inch' ? 'inch' : 'mm';
  } catch {
    here ??= 'mm';
  }
  return here;
}
export function chooseUnits(units: Units): void {
  here = units;
  try {
    localStorage.setItem(KEY, units);
  } catch {
    // A browser that keeps nothing asks again next time.
  }
  for (const tell of listeners) tell();
}
/** What this reader chose, once for all pages. */
export const useUnits = (): Units =>
  useSyncExternalStore(
    (tell) => {
      listeners.add(tell);
      return () => listeners.delete(tell);
    },
    kept,
    () => 'mm',
  );
