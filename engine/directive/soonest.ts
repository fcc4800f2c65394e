import type { EndOfAnswer } from './model.ts';

const least = <T extends number | string>(a: T | null, b: T | null): T | null =>
  a === null ? b : b === null || a <= b ? a : b;

/**
 * The first end with whichever reading and whichever date of both come first: a reading of the one and a date of the
 * other both count. What governs, and how much of it is left, stays the first one's.
 */
export function soonest(a: EndOfAnswer, b: EndOfAnswer): EndOfAnswer {
  return {
    ...a,
    dueAt: {
      total_s: least(a.dueAt.total_s, b.dueAt.total_s),
      landings: least(a.dueAt.landings, b.dueAt.landings),
      day: least(a.dueAt.day, b.dueAt.day),
      now: a.dueAt.now || b.dueAt.now,
    },
    left: a.left && {
      ...a.left,
      hours_s: least(a.left.hours_s, b.left?.hours_s ?? null),
      landings: least(a.left.landings, b.left?.landings ?? null),
    },
  };
}
