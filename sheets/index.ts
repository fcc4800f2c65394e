/** Pages as data. Faces draw these and compute nothing. */
export { type AircraftInput, aircraftSheet } from './aircraft-sheet.ts';
export { permitLines } from './approval-words.ts';
export { type ApprovalRow, approvalsSheet, type Hit, revokingSheet } from './approvals-sheet.ts';
export { type AsKnown, asKnownSheet, type KeptLetter, namesOf } from './as-known.ts';
export {
  type BasisListed,
  basisListSheet,
  basisMissingSheet,
  ofAircraft,
  type PartAnswered,
  withHistory,
} from './basis/index.ts';
export { callSheet } from './call-sheet.ts';
export { type CompareInput, compareSheet, type Side } from './compare-sheet.ts';
export { type ComplianceInput, complianceSheet } from './compliance/sheet.ts';
export { directiveListSheet, directiveSheet } from './directive-sheet.ts';
export type { DraftShown, IssueShown } from './directive-state.ts';
export { plain, uncapital } from './display.ts';
export { type DueInput, dueSheet } from './due-sheet.ts';
export { kindWords, type LoggedEntry, saysOf } from './entry-words.ts';
export type { FleetAircraft, FleetLine, FleetReading } from './fleet/model.ts';
export type { Spare } from './fleet/shelf.ts';
export { type FleetInput, fleetSheet } from './fleet-sheet.ts';
export { type FormulaOnPart, type FormulaShown, formulaShown } from './formula-value.ts';
export { emptySheet } from './frame.ts';
export { growthChanceSheet } from './growth/chance-sheet.ts';
export type { GrowthSheetInput } from './growth/input.ts';
export { growthSheet } from './growth/sheet.ts';
export { type Letter, type LetterInput, letterSheet } from './letter-sheet.ts';
export type { Manual, ManualPart } from './manual.ts';
export type { Units } from './measure.ts';
export * from './model.ts';
export { outlookSheet } from './outlook-sheet.ts';
export { broughtWords, gapWords, type ShownLine, shownLine } from './page-lines.ts';
export { type PapersSheet, papersSheet, recordedWords } from './papers-sheet.ts';
export { type Asked, type ReadingsInput, readingsSheet } from './readings-sheet.ts';
export { recordSheet } from './record-sheet.ts';
export { refusalsSheet, type ShownRefusal } from './refusals-sheet.ts';
export { crackPlaceScene } from './scenes/crack-place.ts';
export { sceneShown } from './scenes/shown.ts';
export { kindName, partInSentence, partName } from './standing.ts';
export {
  type AircraftTeardownInput,
  aircraftTeardownSheet,
  type CalendarInput,
  calendarSheet,
  cardsSheet,
  type FloorListed,
  type FloorSheetInput,
  floorSheet,
  type JobListed,
  type MapListed,
  quoteSheet,
  type StructureSheetInput,
  scheduleSheet,
  shoppingSheet,
  stepsOf,
  structureSheet,
  type TeardownListInput,
  type TeardownSheetInput,
  targetWords,
  teardownListSheet,
  teardownSheet,
  type WingStep,
  type WingSteps,
} from './teardown/index.ts';
export { type TriedAircraft, type TriedRow, type TryInput, trySheet } from './try-sheet.ts';
export type { LifeShown, UsageSheetInput } from './usage/input.ts';
export { usageSheet } from './usage/sheet.ts';
export { SHELF, whatIfWords } from './what-if-words.ts';
