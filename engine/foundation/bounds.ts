import { Refusal } from './refusal.ts';

/** A figure that the papers do not settle: it is not below `low` and not above `high`. Both ends are possible. */
export interface Bounds {
  readonly low: number;
  readonly high: number;
}

/** @throws Refusal `foundation.bounds-reversed`, `foundation.not-finite` */
export function bounds(low: number, high: number): Bounds {
  if (Number.isNaN(low) || Number.isNaN(high))
    throw new Refusal('foundation.not-finite', {
      given: `${low} to ${high}`,
      allowed: 'two numbers',
      remedy: 'Look at the line that made this figure',
    });
  if (low > high)
    throw new Refusal('foundation.bounds-reversed', {
      given: `${low} to ${high}`,
      allowed: 'the lower end first',
      remedy: 'Exchange the two ends, or look for the papers that contradict each other',
    });
  return { low, high };
}
export const exactly = (value: number): Bounds => bounds(value, value);
export const isExact = (b: Bounds): boolean => b.low === b.high;
export const widthOf = (b: Bounds): number => b.high - b.low;
export const addBounds = (a: Bounds, b: Bounds): Bounds => ({ low: a.low + b.low, high: a.high + b.high });
export const subtractBounds = (a: Bounds, b: Bounds): Bounds => ({ low: a.low - b.high, high: a.high - b.low });
export const scaleBounds = (a: Bounds, k: number): Bounds =>
  k >= 0 ? { low: a.low * k, high: a.high * k } : { low: a.high * k, high: a.low * k };
export const hull = (a: Bounds, b: Bounds): Bounds => ({ low: Math.min(a.low, b.low), high: Math.max(a.high, b.high) });
export const contains = (outer: Bounds, inner: Bounds, slack = 0): boolean =>
  outer.low <= inner.low + slack && outer.high >= inner.high - slack;
