import type { Day, growth, Worked } from '../../engine/index.ts';
import type { Units } from '../measure.ts';
import type { TitleBlock } from '../model.ts';

export interface GrowthSheetInput {
  readonly answer: Worked<growth.GrowthAnswer>;
  readonly day: Day;
  readonly units?: Units | undefined;
  /** What the ruled block names first, where the page is of an aircraft. */
  readonly about?: TitleBlock['fields'];
}
