/** How fast would a crack grow, how often must we look? */
export * from './document.ts';
export type * from './model.ts';
