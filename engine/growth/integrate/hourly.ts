import { Refusal } from '../../foundation/refusal.ts';
import { stressRatio } from '../material/index.ts';
import type { CycleSequence, GrowthLaw } from '../model.ts';
import type { HourlyCycle } from './model.ts';

/** Growth an hour, mm, of a tip whose K is `k` times the stress. */
export type HourlyGrowth = (k: number) => number;

/**
 * Turns cycles an hour into growth an hour at a tip.
 *
 * A pure power of K makes one equivalent cycle of the whole spectrum: its n-th power is the sum of those of the
 * cycles. Other laws are summed cycle by cycle at each K.
 *
 * Not valid where cycles act on each other: their order is gone.
 *
 * @param cycles MPa, times an hour; those that never open the crack are left out
 * @throws Refusal `growth.no-cycles`, `growth.stress-ratio`
 * @see Mechanics of Damage Tolerance (Smith, 2022), lectures 17 and 18: equivalent cycle of a spectrum
 */
export function hourlyGrowth(law: GrowthLaw, cycles: readonly HourlyCycle[]): HourlyGrowth {
  checkCycles(cycles);
  const opening = cycles.filter((s) => s.max_MPa > 0 && s.perHour > 0);
  const { power } = law;
  if (power) {
    const sum = opening.reduce(
      (t, s) => t + s.perHour * raised(power.weight(s.min_MPa / s.max_MPa) * s.max_MPa, power.n),
      0,
    );
    return (k) => (k > 0 ? power.c * sum * raised(k, power.n) : 0);
  }
  return (k) => {
    if (!(k > 0)) return 0;
    let sum = 0;
    for (const s of opening) sum += s.perHour * law.rate(s.max_MPa * k, s.min_MPa * k);
    return sum;
  };
}
const raised = (x: number, n: number): number => (x > 0 ? Math.exp(n * Math.log(x)) : 0);

/** @throws Refusal `growth.no-cycles` where nothing happens, `growth.stress-ratio` where a cycle does not fall */
export function checkCycles(cycles: readonly HourlyCycle[]): void {
  if (!cycles.some((s) => s.perHour > 0)) throw noCycles('a loading without a cycle');
  for (const s of cycles) stressRatio(s.max_MPa, s.min_MPa);
}
/**
 * @returns the highest stress of a sequence, MPa
 * @throws Refusal `growth.no-cycles`, `growth.stress-ratio`
 */
export function checkSequence(sequence: CycleSequence): number {
  const { max_MPa, min_MPa } = sequence;
  const highest = highestOf(sequence);
  for (let i = 0; i < max_MPa.length; i++) if (!(min_MPa[i]! < max_MPa[i]!)) stressRatio(max_MPa[i]!, min_MPa[i]!);
  return highest;
}
/**
 * @returns the highest stress of a sequence whose cycles are looked at later, MPa
 * @throws Refusal `growth.no-cycles`
 */
export function highestOf({ max_MPa, min_MPa }: CycleSequence): number {
  if (max_MPa.length === 0 || max_MPa.length !== min_MPa.length) throw noCycles('a sequence without a cycle');
  let highest = Number.NEGATIVE_INFINITY;
  for (let i = 0; i < max_MPa.length; i++) if (max_MPa[i]! > highest) highest = max_MPa[i]!;
  return highest;
}
export const noCycles = (given: string): Refusal =>
  new Refusal('growth.no-cycles', {
    given,
    allowed: 'at least one cycle of stress',
    remedy: 'Give the cycles that work the crack, or the usage they come from',
  });
