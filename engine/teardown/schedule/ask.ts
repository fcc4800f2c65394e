import type { Day } from '../../foundation/day.ts';
import type { Engaged, TeardownDocument } from '../document.ts';
import type { Floor } from '../floor-document.ts';
import type { Operation } from '../model.ts';

/** One job of the floor. Operations that are done take no time; what needs them may begin. */
export interface JobToDo {
  readonly name: string;
  readonly operations: readonly Operation[];
  /** Nothing of it begins before this day. Absent: the first day. */
  readonly ready?: Day;
  /** Hand of the jig that it takes. Absent or `both`: any of the kind will do. */
  readonly side?: 'left' | 'right' | 'both';
}

export interface ScheduleQuestion {
  readonly floor: Floor;
  readonly jobs: readonly JobToDo[];
  /** Other work, by the days that a jig is taken. */
  readonly others: TeardownDocument['others'];
  /** Hands that other work takes. Absent: none. */
  readonly engaged?: readonly Engaged[];
  /** The first day; minutes count from its midnight. */
  readonly day: Day;
  readonly seed: number;
  /** Lists that the search may try, counted; never a time. */
  readonly effort?: number;
  /** Draws of the times. Absent: no chance is given. */
  readonly chance?: TeardownDocument['chance'];
}
