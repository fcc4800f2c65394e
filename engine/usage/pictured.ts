import { curvesOf, type LevelCurve } from './curves.ts';
import type { UsageDocument } from './document.ts';
import type { UsageAnswer } from './model.ts';

type Pictured = UsageAnswer['curves'][number];
const STEPS = 40;

function branch(c: LevelCurve, direction: 'up' | 'down'): Pictured['points'] {
  const span = c[direction];
  if (!span) return [];
  const all = Array.from({ length: STEPS + 1 }, (_, i) => span.from + ((span.to - span.from) * i) / STEPS);
  const sign = direction === 'up' ? 1 : -1;
  return all.flatMap((x) => {
    const perHour = c.perHour(direction, x);
    return perHour > 0 && (x > 0 || sign > 0) ? [{ load_factor: 1 + sign * x, perHour }] : [];
  });
}

/** Exceedance curves of every use as points to draw, rising in load factor; below 1 the downward ones. */
export const pictured = (d: UsageDocument): Pictured[] =>
  d.uses.flatMap(({ use }) =>
    curvesOf(d, use).map((c) => ({
      use,
      load: c.load,
      ground: c.ground,
      points: [...branch(c, 'down').toReversed(), ...branch(c, 'up')],
    })),
  );
