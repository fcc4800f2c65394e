import { inEngineUnits, parseDocument, teardown, type Worked } from '../../engine/index.ts';

/** What the room answers with, in one place. */
export const readStructure = (input: unknown): teardown.StructureMap =>
  parseDocument(teardown.zStructureMap, inEngineUnits(input), 'structure map');
export const readFloor = (input: unknown): teardown.Floor =>
  parseDocument(teardown.zFloor, inEngineUnits(input), 'floor document');
export const readTeardown = (input: unknown): teardown.TeardownDocument =>
  parseDocument(teardown.zTeardownDocument, inEngineUnits(input), 'teardown document');
export const checkMap = (_map: teardown.StructureMap): readonly teardown.MapFinding[] => [];
export const planOf = (_document: teardown.TeardownDocument): teardown.Plan => ({
  operations: [],
  setups: { flips: 0, toolChanges: 0, minutes: 0 },
  least: { steps: [], cost_cents: 0, minutes: 0, bound_cents: 0, proven: false, because: {} },
  extras: [],
  state: { off: [], open: [] },
  findings: [],
});
export const answerTeardown = (document: teardown.TeardownDocument): Worked<teardown.TeardownAnswer> => ({
  value: { plan: planOf(document), schedule: null, shopping: { lines: [], tools: [], warnings: [] }, quote: null },
  working: [],
  warnings: [],
});
