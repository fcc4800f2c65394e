import { isList, isTable, type Json } from './json.ts';

const LONG = 1000;
const texts = new WeakMap<object, string>();

/** As `JSON.stringify`; the text of a long list is made once, and serves as long as the list is the same one. */
export function jsonText(value: unknown): string {
  const v = value as Json;
  if (isList(v) && v.length > LONG) {
    const known = texts.get(v) ?? JSON.stringify(v);
    texts.set(v, known);
    return known;
  }
  if (!isTable(v) || 'toJSON' in v) return JSON.stringify(v);
  const fields = Object.entries(v).filter(([, x]) => x !== undefined);
  return `{${fields.map(([field, x]) => `${JSON.stringify(field)}:${jsonText(x)}`).join(',')}}`;
}
