import type { Day, record, usage, Worked } from '../../engine/index.ts';
import type { Units } from '../measure.ts';
import type { TitleBlock } from '../model.ts';

/** One part on its time line: hours as flown and as they count, day by day, and its gaps, of which those are hatched that no paper covers at all. */
export interface LifeShown {
  readonly name: string;
  readonly life: usage.EquivalentLife;
  readonly gaps: readonly Pick<record.Gap, 'id' | 'from' | 'to'>[];
}
export interface UsageSheetInput {
  readonly answer: Worked<usage.UsageAnswer>;
  readonly day: Day;
  readonly units?: Units | undefined;
  /** The document that was answered: its place, and the source of each of its tables, are shown. */
  readonly document?: usage.UsageDocument;
  /** Parts of one aircraft, where the page is of an aircraft. */
  readonly lives?: readonly LifeShown[];
  /** What the ruled block names first, where the page is of an aircraft. */
  readonly about?: TitleBlock['fields'];
}
