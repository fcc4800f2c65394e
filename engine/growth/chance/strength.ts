import { isRefusal } from '../../foundation/refusal.ts';
import type { CrackForm, CrackSize } from '../model.ts';
import { fracture, netSectionYield, type Strength } from '../residual/index.ts';
import { LENGTHS_TRIED } from '../residual/tangent.ts';

/**
 * What a place still carries, for any toughness: lowest of fracture, Feddersen's tangent and net section yield.
 *
 * What: the same strength as `residualAt`, whose tangent is sought anew for each toughness. Elastic fracture is in
 * proportion to toughness, so that what it is at the lengths tried is worked out once for all lives; between two of them
 * the lowest slope is taken from a parabola.
 * Not valid for: what `residualAt` is not valid for.
 * @param strength at the middle toughness
 * @returns from a factor on toughness the remote stress, MPa, carried with a crack of a size
 * @see `residualAt`, which it is held against
 */
export function strengthAtAny(form: CrackForm, strength: Strength): (factor: number) => (size: CrackSize) => number {
  const through = form.tips === 1 ? form : form.through;
  const tangentAt = through ? tangents(through, strength) : () => null;
  return (factor) => {
    const own = { ...strength, toughness_MPa_sqrt_m: factor * strength.toughness_MPa_sqrt_m };
    const line = tangentAt(factor);
    return (size) => {
      const at = size.a_mm === undefined && through ? through : form;
      const lowest = Math.min(fractureWithin(at, size, own), netSectionYield(at, size, strength.yield_MPa));
      return at === through && size.a_mm === undefined && line && size.c_mm < line.touches
        ? Math.min(lowest, line.start + line.slope * size.c_mm)
        : lowest;
    };
  };
}

/** Where the yielded zone leaves the solution fracture is not told: net section yield stands alone. */
function fractureWithin(form: CrackForm, size: CrackSize, strength: Strength): number {
  try {
    return fracture(form, size, strength);
  } catch (e) {
    if (isRefusal(e)) return Number.POSITIVE_INFINITY;
    throw e;
  }
}

interface Line {
  readonly start: number;
  readonly slope: number;
  readonly touches: number;
}

function tangents(form: CrackForm, strength: Strength): (factor: number) => Line | null {
  const all = LENGTHS_TRIED.map((share) => share * form.longest_c_mm);
  const lengths = all.filter((c) => form.outside({ c_mm: c }) === null);
  if (lengths.length < 3) return () => null;
  const start = netSectionYield(form, { c_mm: all[0]! }, strength.yield_MPa);
  const elastic = Float64Array.from(lengths, (c) => fracture(form, { c_mm: c }, { ...strength, elastic: true }));
  return (factor) => {
    const slope = (i: number) => (factor * elastic[i]! - start) / lengths[i]!;
    let least = 0;
    for (let i = 1; i < lengths.length; i++) if (slope(i) < slope(least)) least = i;
    if (least === 0 || least === lengths.length - 1) return null;
    const [before, at, after] = [slope(least - 1), slope(least), slope(least + 1)];
    const bend = before - 2 * at + after;
    const share = bend > 0 ? (before - after) / (2 * bend) : 0;
    const [near, far] = [lengths[least]!, lengths[least + (share < 0 ? -1 : 1)]!];
    const touches = near * Math.exp(Math.abs(share) * Math.log(far / near));
    return { start, slope: bend > 0 ? at - (before - after) ** 2 / (8 * bend) : at, touches };
  };
}
