import type { Bounds } from '../../foundation/bounds.ts';
import { type Day, daysBetween, later } from '../../foundation/day.ts';
import type { TeardownDocument } from '../document.ts';
import type { Plan, Quote, Schedule } from '../model.ts';
import { replacedParts } from './replaced.ts';

/**
 * The new part that the work waits for longest: its lead time, ordered on the first day, against the day on which it is
 * offered up. Null where none comes later than it is needed, or no schedule says when that is.
 */
export function outrunOf(document: TeardownDocument, plan: Plan, schedule: Schedule | null): Quote['outrun'] {
  if (!schedule) return null;
  const worst = replacedParts(document, plan).flatMap((part) => {
    const start = schedule.operations.find((o) => o.id === `put:${part.id}`)?.startDay;
    if (!part.order || !start) return [];
    const needed = daysBetween(document.day, start);
    const { low, high } = part.order.lead_days;
    const waits: Bounds = { low: Math.max(0, low - needed), high: Math.max(0, high - needed) };
    return waits.high > 0 ? [{ part: part.id, lead_days: { low, high }, waits_days: waits }] : [];
  });
  return worst.sort((a, b) => b.waits_days.high - a.waits_days.high)[0] ?? null;
}

/** Days on the schedule that this job ends on, early and late; later by what it waits for the part. */
export function endOf(document: TeardownDocument, schedule: Schedule | null): { end: Day; p80: Day } | null {
  if (!schedule || schedule.ends.length === 0) return null;
  const own = schedule.ends.find((e) => e.job === document.title) ?? schedule.ends[0]!;
  const late = schedule.finish && schedule.ends.length === 1 ? schedule.finish.p80 : own.day;
  return { end: own.day, p80: later(late, own.day) };
}
