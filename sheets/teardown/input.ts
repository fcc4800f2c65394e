import type { Day, teardown, Worked } from '../../engine/index.ts';
import type { Units } from '../measure.ts';

/** A job that was answered, as the pages of a teardown take it. */
export interface TeardownSheetInput {
  readonly document: teardown.TeardownDocument;
  readonly answer: Worked<teardown.TeardownAnswer>;
  readonly day: Day;
  readonly units?: Units | undefined;
  /** Name under which the job is kept. */
  readonly name?: string | undefined;
  /** Who answers for it, where the page is of a shop. */
  readonly shop?: ShopOf | undefined;
}
export interface ShopOf {
  readonly name: string;
  readonly address?: string;
  readonly person?: string;
  readonly telephone?: string;
}
