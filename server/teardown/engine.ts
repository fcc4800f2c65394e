import { teardown, type Worked } from '../../engine/index.ts';

/** What the room answers with, in one place. */
export const { readStructure, readFloor, readTeardown, planOf } = teardown;
export const checkMap = (_map: teardown.StructureMap): readonly teardown.MapFinding[] => [];
export const answerTeardown = (document: teardown.TeardownDocument): Worked<teardown.TeardownAnswer> => ({
  value: { plan: planOf(document), schedule: null, shopping: { lines: [], tools: [], warnings: [] }, quote: null },
  working: [],
  warnings: [],
});
