export { type BasisPast, withHistory } from './history.ts';
export { type BasisListInput, basisListSheet } from './list.ts';
export { basisMissingSheet, type MissingInput } from './missing.ts';
export type { BasisListed, BasisNamed, PartAnswered } from './model.ts';
export { type OfAircraftInput, ofAircraft } from './of-aircraft.ts';
