import { Refusal } from '../../foundation/refusal.ts';
import type { Geometry } from '../document.ts';
import { fits, type Limit } from './limit.ts';
import { figure, rootPi } from './numbers.ts';
import { aloneThrough, type Solution } from './solution.ts';

/**
 * Geometry factors of one's own against c, straight between the points: K = σ √(πc) β(c). Nothing beyond the first and
 * the last point.
 *
 * @throws Refusal `growth.table-not-rising` for sizes that do not rise, `growth.geometry-impossible` for a table that goes
 *   beyond the width
 */
export function ownTable(g: Extract<Geometry, { shape: 'own_table' }>): Solution {
  const { width_mm, thickness_mm, points, from } = g;
  rising(points.map((p) => p.c_mm));
  const [first, last] = [points[0]!.c_mm, points.at(-1)!.c_mm];
  const beta = (c: number): number => {
    let [low, high] = [0, points.length - 1];
    while (high - low > 1) {
      const middle = (low + high) >> 1;
      if (points[middle]!.c_mm <= c) low = middle;
      else high = middle;
    }
    const [p, q] = [points[low]!, points[high]!];
    return p.beta + ((q.beta - p.beta) * (c - p.c_mm)) / (q.c_mm - p.c_mm);
  };
  return {
    shape: g.shape,
    thickness_mm,
    deepest_a_mm: null,
    longest_c_mm: Math.min(last, width_mm),
    limits: [fits('the length c', (c) => c, width_mm, 'the width'), within(first, last)],
    k: (c) => ({ c: rootPi(c) * beta(c), a: null }),
    alone: aloneThrough,
    net: (c) => 1 - c / width_mm,
    through: null,
    from,
  };
}

const within = (first: number, last: number): Limit => ({
  code: 'growth.outside-solution',
  holds: (c) => c >= first * (1 - 1e-9) && c <= last * (1 + 1e-9),
  given: (c) => `c is ${figure(c)} mm`,
  allowed: `the table given goes from ${figure(first)} to ${figure(last)} mm`,
  remedy: 'Add points to the table; nothing is read beyond its ends',
});

function rising(sizes: readonly number[]): void {
  const at = sizes.findIndex((c, i) => i > 0 && c <= sizes[i - 1]!);
  if (at < 0) return;
  throw new Refusal('growth.table-not-rising', {
    given: `in the table of geometry factors ${sizes[at]} mm stands after ${sizes[at - 1]} mm`,
    allowed: 'sizes that rise from row to row',
    remedy: 'Put the rows in order, each size once',
  });
}
