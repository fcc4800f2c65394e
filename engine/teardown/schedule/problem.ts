import type { Calendar } from './calendar.ts';
import type { Hands, OperationToDo } from './crew.ts';
import type { Together } from './life.ts';
import type { JigTime, Stay } from './stays.ts';

/** Spans of one person in working minutes, rising and apart. */
export interface Off {
  readonly from: Float64Array;
  readonly to: Float64Array;
}
/** What the decoder reads: operations that are not done, by number. */
export interface Problem {
  readonly count: number;
  readonly calendar: Calendar;
  readonly work: readonly OperationToDo[];
  readonly job: Int32Array;
  readonly jobs: number;
  /** Jobs in the order in which they can be planned one after the other: those that stand in a jig first. */
  readonly turn: readonly number[];
  /** Planned minutes. */
  readonly minutes: Float64Array;
  readonly hands: readonly Hands[];
  /** Days off. */
  readonly off: readonly Off[];
  /** Other work: never within an operation, as days off may be. */
  readonly engaged: readonly Off[];
  /** 1 where it may be left overnight. */
  readonly pauses: Uint8Array;
  /** Nothing of it before this minute of the clock. */
  readonly ready: Float64Array;
  readonly before: readonly Int32Array[];
  readonly behind: readonly Int32Array[];
  /** Every operation after what it waits for, in the order given. */
  readonly order: Int32Array;
  /** Number of the stay, or -1. */
  readonly stayOf: Int32Array;
  readonly stays: readonly Stay[];
  readonly jigs: readonly JigTime[];
  /** Number of the group that is planned together, or -1. */
  readonly groupOf: Int32Array;
  readonly groups: readonly Together[];
}
