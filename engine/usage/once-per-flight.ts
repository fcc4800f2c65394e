import type { LevelCurve } from './curves.ts';

/**
 * Increment of load factor, g, that is reached once per flight on average, of all these loads together; 0 where even
 * the least is met less often.
 */
export function oncePerFlight(curves: readonly LevelCurve[], direction: 'up' | 'down', flight_h: number): number {
  const reached = (x: number) => curves.reduce((t, c) => t + c.perHour(direction, x), 0) * flight_h >= 1;
  let low = 0;
  let high = Math.max(0, ...curves.map((c) => c[direction]?.to ?? 0));
  if (reached(high)) return high;
  if (!reached(0)) return 0;
  for (let i = 0; i < 100 && low < (low + high) / 2 && (low + high) / 2 < high; i++) {
    const middle = (low + high) / 2;
    if (reached(middle)) low = middle;
    else high = middle;
  }
  return low;
}
