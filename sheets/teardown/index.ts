export { type CalendarInput, calendarSheet } from './calendar-sheet.ts';
export { cardsSheet } from './cards-sheet.ts';
export { targetWords } from './facts.ts';
export { type FloorSheetInput, floorSheet } from './floor-sheet.ts';
export type { ShopOf, TeardownSheetInput } from './input.ts';
export {
  type AircraftTeardownInput,
  aircraftTeardownSheet,
  type FloorListed,
  type JobListed,
  type MapListed,
  type TeardownListInput,
  teardownListSheet,
} from './list-sheets.ts';
export { quoteSheet } from './quote-sheet.ts';
export { scheduleSheet } from './schedule-sheet.ts';
export { teardownSheet } from './sheet.ts';
export { shoppingSheet } from './shopping-sheet.ts';
export { stepsOf, type WingStep, type WingSteps } from './steps-of.ts';
export { type StructureSheetInput, structureSheet } from './structure-sheet.ts';
