/** Pages as data. Faces draw these and compute nothing. */
export { aircraftListSheet } from './aircraft-list-sheet.ts';
export { type AircraftInput, aircraftSheet } from './aircraft-sheet.ts';
export { callSheet } from './call-sheet.ts';
export { type CompareInput, compareSheet, type Side } from './compare-sheet.ts';
export { directiveListSheet, directiveSheet } from './directive-sheet.ts';
export { type DueInput, dueSheet } from './due-sheet.ts';
export { type FormulaOnPart, type FormulaShown, formulaShown } from './formula-value.ts';
export type { FleetAircraft, FleetLine, FleetReading } from './fleet/model.ts';
export { type FleetInput, fleetSheet } from './fleet-sheet.ts';
export { type Letter, type LetterInput, letterSheet } from './letter-sheet.ts';
export * from './model.ts';
export { outlookSheet } from './outlook-sheet.ts';
export { type Asked, type ReadingsInput, readingsSheet } from './readings-sheet.ts';
export { recordSheet } from './record-sheet.ts';
export { partInSentence, partName } from './standing.ts';
export { type TriedAircraft, type TriedRow, type TryInput, trySheet } from './try-sheet.ts';
export { whatIfWords } from './what-if-words.ts';
