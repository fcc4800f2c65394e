import type { Bounds, Day, record } from '../../engine/index.ts';

/** The two words whose documents a shop keeps. */
export type BasisWord = 'usage' | 'growth';

/** A kept document as pages name it. */
export interface BasisNamed {
  readonly name: string;
  readonly title: string;
  readonly models: readonly string[];
}
/** A kept document in the list of a shop. */
export interface BasisListed extends BasisNamed {
  readonly place: string;
  /** The uses it knows, or what works the crack. */
  readonly speaksOf: string;
  /** `ratios`: without a stress that has a source. */
  readonly gives: 'lives' | 'hours' | 'ratios' | 'unread';
  readonly on: Day;
  readonly by: string;
  readonly entry: number;
  readonly invented: boolean;
  /** What is wrong with it, as a sentence; empty if nothing is. */
  readonly finding: string;
}
/** One part of the aircraft in which the place lies. */
export interface PartAnswered {
  readonly part: record.Thing;
  readonly flown_h: Bounds | null;
  readonly counts_h: Bounds | null;
  readonly left_h: number | null;
}
export const NAMED: Readonly<Record<BasisWord, string>> = { usage: 'usage document', growth: 'growth document' };
