/**
 * The engine in the order of the job. Pure computation: no clock, no network, no file, no screen.
 */
// biome-ignore-all assist/source/organizeImports: the order is that of the job
export * from './foundation/index.ts';
export * as record from './record/index.ts'; //       what has this part lived through?
export * as directive from './directive/index.ts'; // what does a rule ask of it, and since when?
export * as outlook from './outlook/index.ts'; //     when will it bite, at this owner's flying rate?
