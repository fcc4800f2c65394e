import type { Law } from '../document.ts';

/** Constants of each law. Walker's may name a share of compression, which a document cannot: then R < 0 counts a little. */
export type ParisConstants = Extract<Law, { law: 'paris' }>;
export type WalkerConstants = Extract<Law, { law: 'walker' }> & { readonly compression?: number };
export type FormanConstants = Extract<Law, { law: 'forman' }>;
export type ClosureConstants = Extract<Law, { law: 'closure' }>;
export type LawConstants = ParisConstants | WalkerConstants | FormanConstants | ClosureConstants;
