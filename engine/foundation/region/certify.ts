import { solve } from 'yalps';
import { type Block, dot } from './block.ts';
import { scaledBlock } from './scaled.ts';

const OPTIONS = { precision: 1e-9, maxPivots: 4_000, checkCycles: false };
/** A contradiction smaller than this, per row taken part, may be rounding: it is not one. In hours of a scaled row. */
const LEAST = 1e-8;
const ROUNDING = 1e-12;

/**
 * Whether no assignment of a block exists, proven apart from the solver that said so (Farkas' lemma).
 *
 * Rows are added up with weights. If the sum cannot be reached anywhere in the box of the variables, the
 * rows contradict each other, whoever proposed the weights. The weights come from a second linear program
 * that starts at a possible point, so it needs no search for one; whether they prove anything is worked
 * out afterwards by plain sums. Whole numbers are not looked at.
 *
 * @returns true only with such a proof in hand; false says nothing
 */
export function isRuledOut(block: Block): boolean {
  let known = proofs.get(block);
  if (known === undefined) {
    const nothing = block.variables.map(() => 0);
    const weights = weightsFor(block, nothing, 1);
    const { bound, rounding } = outer(block, nothing, weights);
    const taken = weights.reduce((t, y) => t + Math.abs(y), 0);
    known = bound < -(LEAST * taken + rounding);
    proofs.set(block, known);
  }
  return known;
}
const proofs = new WeakMap<Block, boolean>();

/** A value that the objective exceeds nowhere in the block: whatever the weights, the sum of weighted rows holds. */
export function safeBound(block: Block, objective: readonly number[]): number {
  const { scale } = scaledBlock(block);
  const gain = objective.map((c, i) => c * scale[i]!);
  const largest = Math.max(...gain.map(Math.abs)) || 1;
  const scaled = gain.map((c) => c / largest);
  const bounds = [block.rows.map(() => 0), weightsFor(block, scaled, Number.POSITIVE_INFINITY)].map((weights) => {
    const { bound, rounding } = outer(block, scaled, weights);
    return bound + rounding;
  });
  return dot(objective, block.low) + Math.min(...bounds) * largest;
}

/** Greatest value of gain . t over the box alone, after the rows are taken off with their weights. */
function outer(block: Block, gain: readonly number[], weights: readonly number[]) {
  const { rows, width } = scaledBlock(block);
  const rest = [...gain];
  let bound = 0;
  let size = 0;
  rows.forEach((row, r) => {
    const y = weights[r]!;
    if (y === 0) return;
    const part = y * (y > 0 ? row.high : row.low);
    bound += part;
    size += Math.abs(part);
    for (const [v, c] of row.terms) {
      rest[v]! -= y * c;
      size += Math.abs(y * c * width[v]!);
    }
  });
  rest.forEach((c, i) => {
    bound += Math.max(0, c * width[i]!);
    size += Math.abs(c * width[i]!);
  });
  return { bound, rounding: ROUNDING * size };
}

/** Weights of the rows by the dual program; zeros where the solver finds none. */
function weightsFor(block: Block, gain: readonly number[], most: number): number[] {
  const { rows, width } = scaledBlock(block);
  const n = width.length;
  const constraints: [number, { max: number }][] = gain.map((c, i) => [i, { max: -c }]);
  const variables: [number, Map<number, number>][] = width.map((w, i) => [
    i,
    new Map([
      [-1, -w],
      [i, -1],
    ]),
  ]);
  rows.forEach((row, r) => {
    for (const [side, sign] of [
      [row.high, 1],
      [row.low, -1],
    ] as const) {
      if (!Number.isFinite(side)) continue;
      const key = n + 2 * r + (sign > 0 ? 0 : 1);
      const column = new Map(row.terms.map(([v, c]) => [v, -sign * c]));
      column.set(-1, -sign * side);
      if (Number.isFinite(most)) {
        column.set(key, 1);
        constraints.push([key, { max: most }]);
      }
      variables.push([key, column]);
    }
  });
  const answer = solve({ direction: 'maximize', objective: -1, constraints, variables }, OPTIONS);
  const weights = rows.map(() => 0);
  for (const [key, value] of answer.status === 'optimal' ? answer.variables : [])
    if (key >= n && Number.isFinite(value)) weights[(key - n) >> 1]! += (key - n) % 2 === 0 ? value : -value;
  // Of a row open to one side only that side can bear weight.
  return weights.map((y, r) => (Number.isFinite(y > 0 ? rows[r]!.high : rows[r]!.low) ? y : 0));
}
