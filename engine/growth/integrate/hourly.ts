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
 * cycles. Other laws are summed cycle by cycle at each K; of very many unlike cycles those that lie within half a
 * hundredth of the highest stress of each other count as the harshest of them, which never lengthens a life.
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
  const summed = putTogether(opening);
  return (k) => {
    if (!(k > 0)) return 0;
    let sum = 0;
    for (const s of summed) sum += s.perHour * law.rate(s.max_MPa * k, s.min_MPa * k);
    return sum;
  };
}
/** More unlike cycles than this are put together, each cell as its highest and its deepest. */
export const MANY_CYCLES = 6000;
const CELLS = 200;
function putTogether(cycles: readonly HourlyCycle[]): readonly HourlyCycle[] {
  if (cycles.length <= MANY_CYCLES) return cycles;
  const highest = cycles.reduce((most, s) => Math.max(most, s.max_MPa), 0);
  const cell = (x: number) => Math.floor((x / highest) * CELLS);
  const cells = new Map<number, { max_MPa: number; min_MPa: number; perHour: number }>();
  for (const s of cycles) {
    const key = cell(s.max_MPa) + (CELLS + 1) * cell(s.min_MPa);
    const own = cells.get(key);
    if (!own) cells.set(key, { ...s });
    else {
      own.max_MPa = Math.max(own.max_MPa, s.max_MPa);
      own.min_MPa = Math.min(own.min_MPa, s.min_MPa);
      own.perHour += s.perHour;
    }
  }
  return [...cells.values()];
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
