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

/** Largest value of a form over a prepared region; null if the region is impossible. Sound even where `exact` is false. */
export function best(prepared: Prepared, form: LinearForm): (Omit<End, 'proven'> & { exact: boolean }) | null {
  if (!prepared.possible) return null;
  const gain = new Map<number, number>();
  for (const [v, c] of form.terms) gain.set(v, (gain.get(v) ?? 0) + c);
  const witness = [...prepared.low];
  let exact = true;
  let beyond = 0;
  for (const block of prepared.blocks) {
    const objective = block.variables.map((v) => gain.get(v) ?? 0);
    const touched = objective.some((c) => c !== 0);
    const found = touched ? bestOfBlock(block, objective) : somewhere(block);
    if (!found) return null;
    const point = found.point ?? somewhere(block)?.point;
    if (!point) throw unsolved(block);
    block.variables.forEach((v, i) => {
      witness[v] = point[i]!;
    });
    if (touched) {
      exact &&= found.exact;
      beyond += Math.max(0, found.bound - dot(objective, point));
    }
  }
  return { value: evaluateForm(form, witness) + beyond, witness, exact };
}

const unsolved = (block: Block): Refusal =>
  new Refusal('region.unsolved', {
    given: `a block of ${block.variables.length} variables and ${block.rows.length} constraints`,
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
  const prepared = prepare(region);
  checkForm(form, region);
  const found = best(prepared, end === 'high' ? form : scaleForm(form, -1));
  if (!found) throw impossible(region);
  const value = end === 'high' ? found.value : -found.value || 0;
  return { value, proven: found.exact ? 'exact' : 'enclosure', witness: found.witness };
}

/** One end, or null where no history is possible: for callers that try cases. */
export function endIfPossible(form: LinearForm, region: Region, end: 'low' | 'high'): End | null {
  return best(prepare(region), { constant: 0, terms: [] }) ? linearEnd(form, region, end) : null;
}

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
