import type { Bounds } from '../../foundation/bounds.ts';
import type { TeardownDocument } from '../document.ts';
import type { Plan, Schedule } from '../model.ts';
import { rangeOf } from './hours.ts';
import { pertMoments } from './three-point.ts';

const MINUTES_PER_HOUR = 60;
/** Working hours of a day where no schedule says how long the wing stands. */
const DAY_H = 8;

/**
 * Days that a jig is taken: as scheduled, and at the high end by as much longer as its work may take. Without a schedule
 * the hours of that work, one operation after the other, in days of eight hours, and that is said.
 */
export function jigDaysOf(
  document: TeardownDocument,
  plan: Plan,
  schedule: Schedule | null,
): { days: Bounds; because: string; warnings: readonly string[] } {
  const work = plan.operations.filter((o) => o.jig && !o.unattended && !o.done).map((o) => o.minutes);
  const mean_h = work.reduce((s, t) => s + pertMoments(t).mean, 0) / MINUTES_PER_HOUR;
  const high_h = rangeOf(work, document.chance.common).high;
  const longer = mean_h > 0 ? Math.max(1, high_h / mean_h) : 1;
  if (schedule) {
    const days = schedule.jigDays.reduce((s, j) => s + j.days, 0);
    return {
      days: { low: days, high: Math.ceil(days * longer) },
      because: 'As scheduled, with nights; the high end if the work in it takes longer',
      warnings: [],
    };
  }
  if (work.length === 0) return { days: { low: 0, high: 0 }, because: 'Not taken', warnings: [] };
  return {
    days: { low: Math.ceil(mean_h / DAY_H), high: Math.ceil(high_h / DAY_H) },
    because: 'Hours of the work in it, in days of 8 hours: without a schedule',
    warnings: ['Jig days are taken from hours, not from a schedule: drying and waiting in the jig are not in them'],
  };
}
