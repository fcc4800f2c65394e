import { isTable, type Json } from './json.ts';

const KEY = 'sparwright.directive.handed-over';

/** A document that another page read and the form is to open. */
export const handOver = (document: Json): void => sessionStorage.setItem(KEY, JSON.stringify(document));

/** Takes it, once. */
export function handedOver(): Json | null {
  try {
    const text = sessionStorage.getItem(KEY);
    sessionStorage.removeItem(KEY);
    const v = text === null ? null : (JSON.parse(text) as Json);
    return v !== null && isTable(v) ? v : null;
  } catch {
    return null;
  }
}
