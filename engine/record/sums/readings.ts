import { dayFromNumber } from '../../foundation/day.ts';
import type { Life } from '../model.ts';
import { READING, type Sums } from './model.ts';

/** A total as read, wherever it was read from. */
export type ReadTotal = Omit<Life['readings'][number], 'entry'>;
/** Totals as read, oldest first: what `lifeOf` gives of the aircraft up to any day from the newest entry on. */
export function readingsOfSums({ readings: r }: Sums): ReadTotal[] {
  return Array.from({ length: r.length / READING }, (_, i) => {
    const [day, total_s, landings] = [r[i * READING]!, r[i * READING + 1]!, r[i * READING + 2]!];
    return { day: dayFromNumber(day), total_s, landings: landings < 0 ? null : landings };
  });
}
