import { solve } from 'yalps';
import { SECONDS_PER_HOUR } from '../convert.ts';
import { type Block, type BlockBest, dot, isPossible } from './block.ts';

/** Continuous variables are seconds; the solver works in hours (in less for short ranges), where its tolerance of 1e-8 is 0.04 ms. */
const SCALE = SECONDS_PER_HOUR;
const OPTIONS = { precision: 1e-8, maxPivots: 20_000, maxIterations: 4_000, includeZeroVariables: true };

/**
 * Largest value of an objective over a block, by the simplex method with branch and cut (yalps).
 *
 * Variables are shifted to start at zero, seconds become hours, every row and the objective are divided
 * by their largest coefficient. The point is checked against the block before it is believed. If the
 * solver gives up, the whole-number condition is dropped, then the rows: the bound stays safe.
 *
 * @returns null if the block is impossible
 */
export function bestBySolver(block: Block, objective: readonly number[]): BlockBest | null {
  const whole = block.integer.some(Boolean);
  const found = attempt(block, objective, whole);
  if (found === null) return null;
  if (found.point) return found;
  const relaxed = whole ? attempt(block, objective, false) : found;
  if (relaxed === null) return null;
  return { bound: relaxed.bound, point: null, exact: false };
}

const boxBound = (block: Block, objective: readonly number[]): number =>
  objective.reduce((t, c, i) => t + c * (c > 0 ? block.high[i]! : block.low[i]!), 0);

function attempt(block: Block, objective: readonly number[], whole: boolean): BlockBest | null {
  const scale = block.integer.map((integer, i) =>
    integer ? 1 : Math.min(SCALE, Math.max(1, (block.high[i]! - block.low[i]!) / 1000)),
  );
  const gain = objective.map((c, i) => c * scale[i]!);
  const largest = Math.max(...gain.map(Math.abs)) || 1;
  const columns = objective.map((_, i) => new Map<number, number>([[-1, gain[i]! / largest]]));
  const constraints: [number, { min?: number; max?: number }][] = [];
  let key = 0;
  for (const row of block.rows) {
    const size = Math.max(...row.terms.map(([v, c]) => Math.abs(c * scale[v]!))) || 1;
    const shift = row.terms.reduce((t, [v, c]) => t + c * block.low[v]!, 0);
    for (const [v, c] of row.terms) columns[v]!.set(key, (c * scale[v]!) / size);
    constraints.push([key++, limits((row.low - shift) / size, (row.high - shift) / size)]);
  }
  for (let i = 0; i < objective.length; i++) {
    columns[i]!.set(key, 1);
    constraints.push([key++, { max: (block.high[i]! - block.low[i]!) / scale[i]! }]);
  }
  const integers = whole ? block.integer.flatMap((integer, i) => (integer ? [i] : [])) : [];
  const model = {
    direction: 'maximize' as const,
    objective: -1,
    constraints,
    variables: columns.map((c, i) => [i, c] as const),
    integers,
  };
  const answer = solve(model, OPTIONS);
  if (answer.status === 'infeasible') return null;
  if (answer.status !== 'optimal') return { bound: boxBound(block, objective), point: null, exact: false };
  const point = objective.map((_, i) => block.low[i]!);
  for (const [i, y] of answer.variables) point[i] = block.low[i]! + y * scale[i]!;
  const tidy = tidied(block, point, whole);
  const value = dot(objective, tidy);
  const claimed = dot(objective, block.low) + answer.result * largest;
  return {
    bound: Math.abs(claimed - value) < 1e-6 * Math.max(1, largest) ? value : Math.max(value, claimed),
    point: isPossible(block, tidy, 1e-3) ? tidy : null,
    exact: true,
  };
}

const limits = (min: number, max: number) => ({
  ...(Number.isFinite(min) ? { min } : {}),
  ...(Number.isFinite(max) ? { max } : {}),
});

/** Whole seconds where that keeps every row, whole pieces always; back inside the box. */
function tidied(block: Block, point: readonly number[], whole: boolean): number[] {
  const inside = point.map((x, i) =>
    Math.min(block.high[i]!, Math.max(block.low[i]!, whole && block.integer[i] ? Math.round(x) : x)),
  );
  const snapped = inside.map((x) => (Math.abs(x - Math.round(x)) < 1e-3 ? Math.round(x) : x));
  return isPossible(block, snapped) ? snapped : inside;
}
