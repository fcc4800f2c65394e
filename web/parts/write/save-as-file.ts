import type { Json } from './json.ts';
import { jsonText } from './json-text.ts';

/** Hands a document to the reader's own disk; the form reads it back. */
export function saveAsFile(document_: Json, name: string): void {
  const link = document.createElement('a');
  link.href = URL.createObjectURL(new Blob([jsonText(document_)], { type: 'application/json' }));
  link.download = `${name}.json`;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 60_000);
}
