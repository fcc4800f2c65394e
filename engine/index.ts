/**
 * The engine in the order of the job. Pure computation: no clock, no network, no file, no screen.
 */
// biome-ignore-all assist/source/organizeImports: the order is that of the job
export * from './foundation/index.ts';
export * as record from './record/index.ts'; //       what has this part lived through?
export * as directive from './directive/index.ts'; // what does a rule ask of it, and since when?
export * as outlook from './outlook/index.ts'; //     when will it bite, at this owner's flying rate?
export * as usage from './usage/index.ts'; //         how hard has it been flown?
export * as growth from './growth/index.ts'; //       how fast would a crack grow, how often must we look?
export * as teardown from './teardown/index.ts'; //   what has to come off, in what order, how long does it take?
