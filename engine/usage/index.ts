/** How hard has it been flown? */
export * from './document.ts';
export type * from './model.ts';
