import { isTable, type Json } from './json.ts';

const keyOf = (word: string) => `sparwright.${word}.handed-over`;

/** A document that another page read and the form is to open. */
export const handOver = (word: string, document: Json): void =>
  sessionStorage.setItem(keyOf(word), JSON.stringify(document));

/** Takes it, once. */
export function handedOver(word: string): Json | null {
  try {
    const text = sessionStorage.getItem(keyOf(word));
    sessionStorage.removeItem(keyOf(word));
    const v = text === null ? null : (JSON.parse(text) as Json);
    return v !== null && isTable(v) ? v : null;
  } catch {
    return null;
  }
}
