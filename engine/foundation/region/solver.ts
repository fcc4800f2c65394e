import { solve } from 'yalps';
import { type Block, type BlockBest, dot, isPossible } from './block.ts';
import { isRuledOut, safeBound } from './certify.ts';
import { scaledBlock } from './scaled.ts';
import { bestByHalving } from './whole.ts';

interface Way {
  readonly precision: number;
  readonly reversed: boolean;
}
/** The solver divides by small numbers when unlucky: another order of the rows, or a wider tolerance, then helps. */
const WAYS: readonly Way[] = [
  { precision: 1e-8, reversed: false },
  { precision: 1e-8, reversed: true },
  { precision: 1e-7, reversed: false },
  { precision: 1e-9, reversed: true },
];
const OPTIONS = { maxPivots: 20_000, maxIterations: 4_000, includeZeroVariables: true };

/**
 * Largest value of an objective over a block, by the simplex method with branch and cut (yalps).
 *
 * Variables are shifted to start at zero, seconds become hours, every row and the objective are divided
 * by their largest coefficient. The solver is believed in nothing: its point is checked against the block,
 * and "impossible" against a proof of its own (`certify.ts`). Without a point and without a proof it is asked
 * in other ways; whole numbers are then sought by halving (`whole.ts`). If all that fails, a bound that
 * holds in any case is given, without a point.
 *
 * @returns null only if the block is proven impossible
 */
export function bestBySolver(block: Block, objective: readonly number[]): BlockBest | null {
  if (!block.integer.some(Boolean)) return continuous(block, objective);
  const found = attempt(block, objective, true, WAYS[0]!);
  if (found !== 'failed' && found !== 'impossible') return found;
  if (found === 'impossible' && isRuledOut(block)) return null;
  return bestByHalving(block, objective, continuous);
}

function continuous(block: Block, objective: readonly number[]): BlockBest | null {
  for (const way of WAYS) {
    const found = attempt(block, objective, false, way);
    if (found !== 'failed' && found !== 'impossible') return found;
    if (found === 'impossible' && isRuledOut(block)) return null;
  }
  return { bound: safeBound(block, objective), point: null, exact: false };
}

function attempt(
  block: Block,
  objective: readonly number[],
  whole: boolean,
  { precision, reversed }: Way,
): BlockBest | 'impossible' | 'failed' {
  const { scale, width, rows } = scaledBlock(block);
  const gain = objective.map((c, i) => c * scale[i]!);
  const largest = Math.max(...gain.map(Math.abs)) || 1;
  const columns = objective.map((_, i) => new Map<number, number>([[-1, gain[i]! / largest]]));
  const constraints: [number, { min?: number; max?: number }][] = [];
  let key = 0;
  for (const row of rows) {
    for (const [v, c] of row.terms) columns[v]!.set(key, c);
    constraints.push([key++, limits(row.low, row.high)]);
  }
  width.forEach((w, i) => {
    columns[i]!.set(key, 1);
    constraints.push([key++, { max: w }]);
  });
  const variables = columns.map((c, i) => [i, c] as const);
  const answer = solve(
    {
      direction: 'maximize' as const,
      objective: -1,
      constraints: reversed ? constraints.reverse() : constraints,
      variables: reversed ? variables.reverse() : variables,
      integers: whole ? block.integer.flatMap((integer, i) => (integer ? [i] : [])) : [],
    },
    { ...OPTIONS, precision },
  );
  if (answer.status === 'infeasible') return 'impossible';
  if (answer.status !== 'optimal') return 'failed';
  const point = objective.map((_, i) => block.low[i]!);
  for (const [i, y] of answer.variables) point[i] = block.low[i]! + y * scale[i]!;
  const tidy = tidied(block, point, whole);
  if (!isPossible(block, tidy, 1e-3)) return 'failed';
  const value = dot(objective, tidy);
  const claimed = dot(objective, block.low) + answer.result * largest;
  return {
    bound: Math.abs(claimed - value) < 1e-6 * Math.max(1, largest) ? value : Math.max(value, claimed),
    point: tidy,
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
