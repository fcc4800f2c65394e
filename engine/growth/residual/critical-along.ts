import type { CrackForm, CrackSize, CriticalSize } from '../model.ts';
import { positive } from '../require.ts';
import type { Strength } from './fracture.ts';
import { carried, residualOf } from './residual-at.ts';

/**
 * The first size along a growth path at which the place no longer carries the limit stress.
 *
 * Between two points of the path the size goes straight; the crossing is halved down to a billionth of the step. A
 * part-through crack and the through crack that follows it are not joined: the first through point is looked at on its own.
 *
 * Not valid beyond the path: where the limit stress is carried to its end, the ligament ends it there.
 *
 * @param form the form of the first point; sizes without depth belong to its through crack
 * @param path sizes, mm, as the crack grows
 * @param limit_MPa remote stress at limit load, MPa
 * @param strength yield stress, MPa, and toughness, MPa√m, at this thickness
 * @returns the critical size and what ends it
 * @throws Refusal `growth.not-positive`, also for a path without sizes; `growth.outside-solution`
 * @see [DT737] lectures 8 and 9
 */
export function criticalAlong(
  form: CrackForm,
  path: readonly CrackSize[],
  limit_MPa: number,
  strength: Strength,
): CriticalSize {
  positive(limit_MPa, 'limit stress', 'MPa');
  positive(path.length, 'number of sizes', '');
  const residual = residualOf(form, strength);
  const fails = (size: CrackSize) => carried(residual(size)) <= limit_MPa;
  const ended = (size: CrackSize, by: CriticalSize['by']): CriticalSize => ({
    size,
    by,
    limit_MPa,
    toughness_MPa_sqrt_m: strength.toughness_MPa_sqrt_m,
  });
  const beyond = path.findIndex(fails);
  if (beyond < 0) return ended(path.at(-1)!, 'ligament');
  const size = beyond === 0 ? path[0]! : crossing(path[beyond - 1]!, path[beyond]!, fails);
  return ended(size, residual(size).governs);
}

function crossing(from: CrackSize, to: CrackSize, fails: (size: CrackSize) => boolean): CrackSize {
  if ((from.a_mm === undefined) !== (to.a_mm === undefined)) return to;
  let [holds, falls] = [0, 1];
  while (falls - holds > 1e-9) {
    const share = (holds + falls) / 2;
    if (fails(between(from, to, share))) falls = share;
    else holds = share;
  }
  return between(from, to, falls);
}
const between = (from: CrackSize, to: CrackSize, share: number): CrackSize => ({
  c_mm: from.c_mm + share * (to.c_mm - from.c_mm),
  ...(from.a_mm === undefined ? {} : { a_mm: from.a_mm + share * (to.a_mm! - from.a_mm) }),
});
