import { Refusal } from '../refusal.ts';
import { type Block, type BlockBest, dot } from './block.ts';
import { checkForm } from './checked.ts';
import { whyImpossible } from './explain.ts';
import { evaluateForm, scaleForm } from './forms.ts';
import type { End, Extremes, LinearForm, Region } from './model.ts';
import { bestOfOneRow, hasClosedForm } from './one-row.ts';
import { type Prepared, prepare } from './prepare.ts';
import { bestBySolver } from './solver.ts';

export const bestOfBlock = (block: Block, objective: readonly number[]): BlockBest | null =>
  hasClosedForm(block) ? bestOfOneRow(block, objective) : bestBySolver(block, objective);

const still = new WeakMap<Block, BlockBest | null>();
/** Any possible assignment of a block; remembered. */
function somewhere(block: Block): BlockBest | null {
  if (!still.has(block))
    still.set(
      block,
      bestOfBlock(
        block,
        block.variables.map(() => 0),
      ),
    );
  return still.get(block)!;
}

/** A bound that no possible history exceeds, and the furthest history found; none if the solver found no history at all. */
export type Outer = Omit<End, 'witness'> & { readonly witness: readonly number[] | null };

const boxBound = (block: Block, objective: readonly number[]): number =>
  objective.reduce((t, c, i) => t + c * (c > 0 ? block.high[i]! : block.low[i]!), 0);

/** A block is impossible for every objective or for none. */
function bestIn(block: Block, objective: readonly number[]): BlockBest | null {
  if (objective.every((c) => c === 0)) return somewhere(block);
  const found = bestOfBlock(block, objective);
  if (found?.point) return found;
  const any = somewhere(block);
  if (!any) return null;
  return { bound: found?.bound ?? boxBound(block, objective), point: any.point, exact: false };
}

/** Largest value of a form over a prepared region; null if the region is impossible. Sound even where not `exact`. */
export function best(prepared: Prepared, form: LinearForm): Outer | null {
  if (!prepared.possible) return null;
  const gain = new Map<number, number>();
  for (const [v, c] of form.terms) gain.set(v, (gain.get(v) ?? 0) + c);
  const furthest = [...prepared.low];
  let found = true;
  let exact = true;
  let beyond = 0;
  for (const block of prepared.blocks) {
    const objective = block.variables.map((v) => gain.get(v) ?? 0);
    const end = bestIn(block, objective);
    if (!end) return null;
    found &&= end.point !== null;
    const point = end.point ?? block.low;
    block.variables.forEach((v, i) => {
      furthest[v] = point[i]!;
    });
    if (objective.every((c) => c === 0)) continue;
    exact &&= end.exact;
    const more = end.bound - dot(objective, point);
    beyond += end.point ? Math.max(0, more) : more;
  }
  return {
    value: evaluateForm(form, furthest) + beyond,
    witness: found ? furthest : null,
    proven: exact && found ? 'exact' : 'enclosure',
  };
}

export const unsolved = (region: Region): Refusal =>
  new Refusal('region.unsolved', {
    given: `${region.variables.length} variables and ${region.constraints.length} constraints`,
    allowed: 'regions for which the solver finds one possible history',
    remedy: 'Join neighbouring stretches without papers, or settle some of their figures',
  });

/**
 * Least and greatest value of a linear figure over all possible histories.
 *
 * Settled variables are folded in, independent blocks are solved apart: boxes and single sums in closed
 * form, the rest by the solver. Time flown is continuous here: the ends over real numbers hold those over
 * whole seconds, and lie less than a second per stretch outside them. Nothing is rounded.
 *
 * @throws Refusal `region.impossible` with the constraints that contradict each other, `region.unsolved`,
 *   `region.variable-unbounded`, `region.variable-empty`, `region.term-invalid`
 */
export function linearExtremes(form: LinearForm, region: Region): Extremes {
  return { low: linearEnd(form, region, 'low'), high: linearEnd(form, region, 'high') };
}

/** One end alone, at half the cost. @throws Refusal as `linearExtremes` */
export function linearEnd(form: LinearForm, region: Region, end: 'low' | 'high'): End {
  const found = endIfPossible(form, region, end);
  if (!found) throw impossible(region);
  const { witness } = found;
  if (!witness) throw unsolved(region);
  return { ...found, witness };
}

/**
 * One end, or null where it is proven that no history is possible: for callers that try cases. A case that
 * cannot be decided is an enclosure without a witness; its bound holds.
 */
export function endIfPossible(form: LinearForm, region: Region, end: 'low' | 'high'): Outer | null {
  const prepared = prepare(region);
  checkForm(form, region);
  const found = best(prepared, end === 'high' ? form : scaleForm(form, -1));
  return found && { ...found, value: end === 'high' ? found.value : -found.value || 0 };
}

/** False only with a proof: papers are never called contradictory by rounding. */
export function isFeasible(region: Region): boolean {
  const prepared = prepare(region);
  return prepared.possible && prepared.blocks.every((b) => somewhere(b) !== null);
}

export function impossible(region: Region): Refusal {
  const names = whyImpossible(region, isFeasible);
  return new Refusal('region.impossible', {
    given: `no history agrees with all of: ${names.join('; ')}`,
    allowed: 'papers that can all be true at once',
    remedy: 'Look at these papers; one of them, or its entry here, is wrong',
  });
}
