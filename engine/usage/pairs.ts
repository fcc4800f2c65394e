import type { LevelCurve } from './curves.ts';
import { allOf, cutsOf, type Levels, lastOf, levelAt } from './levels.ts';

/** Events of one kind: increments up and down that follow each other, g; times an hour. */
export interface Pair {
  readonly up: number;
  readonly down: number;
  readonly perHour: number;
}
/** How levels are cut into bands. */
export interface Cut {
  /** Bands in each stretch between two levels; absent: as many as keep the sum within 0.1 %. */
  readonly parts?: number;
  /** What passes the last level is counted at it, or half a stretch beyond it. */
  readonly last?: 'at level' | 'open';
}

/** Increment of a band of occurrences, in the middle of it. */
function middle(l: Levels | null, often: number, seldom: number, cut: Cut): number {
  if (!l || often > allOf(l)) return 0;
  const least = l.times[l.times.length - 1]!;
  if (often <= least) {
    const stretch = lastOf(l) - l.at[l.at.length - 2]!;
    return lastOf(l) + (cut.last === 'open' ? stretch / 2 : 0);
  }
  return (levelAt(l, often, true) + levelAt(l, Math.max(seldom, least))) / 2;
}

/**
 * The events of a load, as pairs. Gusts, taxi and landing: an upward increment with the downward one that is met as
 * often; where one way is met more often, the rest pairs with 1 g. Manoeuvres each pair with 1 g.
 */
export function pairsOf(curve: LevelCurve, cut: Cut = {}): Pair[] {
  const { up, down } = curve.levels;
  if (curve.load === 'manoeuvre') return [...bands(up, null, cut), ...bands(null, down, cut)];
  return bands(up, down, cut);
}

function bands(up: Levels | null, down: Levels | null, cut: Cut): Pair[] {
  const given = [up, down].filter((l) => l !== null);
  const cuts = [...new Set([...given.flatMap((l) => cutsOf(l, cut.parts)), 0])].sort((a, b) => b - a);
  return cuts.slice(1).flatMap((seldom, i) => {
    const often = cuts[i]!;
    const pair = {
      up: middle(up, often, seldom, cut),
      down: middle(down, often, seldom, cut),
      perHour: often - seldom,
    };
    return pair.up > 0 || pair.down > 0 ? [pair] : [];
  });
}
