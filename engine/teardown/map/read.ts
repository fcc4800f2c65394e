import { parseDocument } from '../../foundation/document.ts';
import { inEngineUnits } from '../../foundation/unit-names.ts';
import { type TeardownDocument, zTeardownDocument } from '../document.ts';
import { type Floor, zFloor } from '../floor-document.ts';
import { type StructureMap, zStructureMap } from '../structure-document.ts';
import { requireFloor, requireMap, requireTeardown } from './require.ts';

/**
 * Reads a structure map: figures in engine units, shape by the schema, then what the schema cannot say.
 * @throws Refusal `foundation.document-invalid`, `foundation.two-units`, `teardown.id-twice`, `teardown.id-unknown`,
 * `teardown.map-broken`
 */
export function readStructure(input: unknown): StructureMap {
  const map = parseDocument(zStructureMap, inEngineUnits(input), 'structure document');
  requireMap(map);
  return map;
}

/** Reads the floor of a shop. @throws Refusal as `readStructure` */
export function readFloor(input: unknown): Floor {
  const floor = parseDocument(zFloor, inEngineUnits(input), 'floor document');
  requireFloor(floor);
  return floor;
}

/** Reads a question with its map and floor. @throws Refusal as `readStructure`, and `teardown.target-impossible` */
export function readTeardown(input: unknown): TeardownDocument {
  const document = parseDocument(zTeardownDocument, inEngineUnits(input), 'teardown document');
  requireMap(document.map);
  if (document.floor) requireFloor(document.floor);
  requireTeardown(document);
  return document;
}
