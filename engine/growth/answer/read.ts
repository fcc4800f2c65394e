import { parseDocument } from '../../foundation/document.ts';
import { inEngineUnits } from '../../foundation/unit-names.ts';
import { type GrowthDocument, zGrowthDocument } from '../document.ts';
import { checkGrowth } from './check.ts';

/**
 * Reads a growth document: figures in engine units, shape by the schema, then what the schema cannot say.
 * @throws Refusal `foundation.document-invalid`, `foundation.two-units` and all that `checkGrowth` refuses
 */
export function readGrowth(input: unknown): GrowthDocument {
  const document = parseDocument(zGrowthDocument, inEngineUnits(input), 'growth document');
  checkGrowth(document);
  return document;
}
