import type { Day } from '../../engine/index.ts';

/** A day of a fixture, written out. */
export const day = (text: string): Day => text as Day;
