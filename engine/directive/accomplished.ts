import type { Day } from '../foundation/day.ts';
import type { EntryOf } from '../record/index.ts';

export type Accomplished = EntryOf<'accomplished'>;
export const byMoment = (a: { day: Day; order: number }, b: { day: Day; order: number }) =>
  a.day < b.day ? -1 : a.day > b.day ? 1 : a.order - b.order;
