import type { Bounds } from './bounds.ts';
import type { Day } from './day.ts';
import type { Evidence, Provenance } from './provenance.ts';

/** Units of the working. Seconds and mm inside; the sheet turns them into the reader's. `''` is a pure number. */
export type WorkingUnit =
  | ''
  | 's'
  | 'landings'
  | 'days'
  | 'count'
  | 'mm'
  | 'N'
  | 'MPa'
  | 'kg'
  | 'MPa√m'
  | 'mm/cycle'
  | 'cycles'
  | 'flights'
  | '1/h'
  | 'g'
  | 'm/s'
  | 'h'
  | '1/day'
  | 'min'
  | 'cents'
  | 'counted';

/** One step behind a figure. `value` is in engine units. */
export interface Step {
  readonly symbol: string;
  readonly meaning: string;
  readonly formula: string;
  readonly value: number | Bounds | Day | string;
  readonly unit: WorkingUnit;
  /** The paragraph, paper or method this step rests on. */
  readonly source?: string;
  readonly provenance?: Provenance;
  readonly evidence?: Evidence;
  /** Ids of the log entries the step was read from. */
  readonly entries?: readonly string[];
}

/** A result with the steps that lead to it. Every figure on a page can be followed through these. */
export interface Worked<T> {
  readonly value: T;
  readonly working: readonly Step[];
  /** Sentences a reader must see beside the value: where the method stops being valid, what was assumed. */
  readonly warnings: readonly string[];
}
export const worked = <T>(value: T, working: readonly Step[], warnings: readonly string[] = []): Worked<T> => ({
  value,
  working,
  warnings,
});
