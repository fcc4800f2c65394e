import { type Json, textOf } from './json.ts';

const BLANKS = /[\s\u00a0\u202f]/g;
/** A figure from a person's writing: blanks between thousands say nothing. What is no figure stays text. */
export function figureOf(text: string): number | string {
  const bare = text.replace(BLANKS, '').replace('−', '-');
  return /^-?\d{1,15}(\.\d{0,9})?$/.test(bare) ? Number(bare) : text;
}
/** As the reader writes it: thousands apart, without what conversion leaves beyond fifteen figures. */
export function shownFigure(v: Json | undefined): string {
  if (typeof v !== 'number') return textOf(v);
  const [whole, part] = String(Number(v.toPrecision(15))).split('.');
  const grouped = whole!.replace(/\B(?=(\d{3})+$)/g, '\u202f');
  return part === undefined ? grouped : `${grouped}.${part}`;
}
/** A word of the record as plain words. */
export const shownWord = (v: Json | undefined): string => textOf(v).replaceAll('_', ' ');
export const itemsOf = (text: string): string[] =>
  text
    .split(/[,;\n]/)
    .map((t) => t.trim())
    .filter((t) => t !== '');
