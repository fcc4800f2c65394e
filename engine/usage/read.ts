import { parseDocument } from '../foundation/document.ts';
import { inEngineUnits } from '../foundation/unit-names.ts';
import { checkDocument } from './check-document.ts';
import { type UsageDocument, zUsageDocument } from './document.ts';

/**
 * Reads a usage document: figures in engine units, shape by the schema, then what the schema cannot say.
 * @throws Refusal `foundation.document-invalid`, `foundation.two-units` and all that `checkDocument` refuses
 */
export function readUsage(input: unknown): UsageDocument {
  const document = parseDocument(zUsageDocument, inEngineUnits(input), 'usage document');
  checkDocument(document);
  return document;
}
