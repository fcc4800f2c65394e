import type { CrackForm, CrackSize } from '../model.ts';
import { positive } from '../require.ts';

/**
 * Remote stress at which what is left of the section yields: σys times net over gross area.
 *
 * Not valid for the bending of a section that is cracked on one side: the load is taken as shared evenly.
 *
 * @param size of the crack, mm
 * @param yield_MPa yield stress, MPa
 * @returns remote stress, MPa; 0 where nothing is left
 * @throws Refusal `growth.not-positive`
 * @see [DT737] lecture 8
 */
export const netSectionYield = (form: CrackForm, size: CrackSize, yield_MPa: number): number =>
  positive(yield_MPa, 'yield stress', 'MPa') * Math.max(0, form.net(size));
