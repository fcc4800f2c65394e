import type { EffectiveCycle } from '../interaction/index.ts';
import type { CrackForm, CycleSequence, GrowthLaw } from '../model.ts';
import type { KernelInput, KernelState } from './model.ts';
import { kAt } from './path.ts';

/** A crack between two cycles, while it is run. */
export type Running = { -readonly [field in keyof KernelState]: KernelState[field] };
export type Stopped = 'reached' | 'outside' | 'broken';

/**
 * Runs cycles one after the other, the readable form: K at the size before the cycle, the cycle as each tip feels it
 * after its overload, growth of both tips, the size after it.
 * @param until stops after the cycle that reaches one of these
 */
export function run(
  form: CrackForm,
  law: GrowthLaw,
  felt: EffectiveCycle,
  { max_MPa, min_MPa }: CycleSequence,
  crack: Running,
  until: KernelInput['until'],
): Stopped {
  const length = max_MPa.length;
  const deep = form.tips === 2;
  while (crack.cycles < until.cycles && crack.c_mm < until.c_mm && (!deep || crack.a_mm < until.a_mm)) {
    const k = kAt(form, deep ? crack : { c_mm: crack.c_mm });
    if (k === null) return 'outside';
    const i = crack.cycles % length;
    const [high, low] = [max_MPa[i]!, min_MPa[i]!];
    const atC = felt(crack.c_overload, high * k.c, low * k.c, crack.c_mm);
    const atA = deep ? felt(crack.a_overload, high * k.a!, low * k.a!, crack.a_mm) : null;
    const dc = atC.slowed * law.rate(atC.kMax, atC.kMin);
    const da = atA ? atA.slowed * law.rate(atA.kMax, atA.kMin) : 0;
    if (!(dc + da < Number.POSITIVE_INFINITY)) return 'broken';
    crack.c_overload = atC.overload;
    if (atA) crack.a_overload = atA.overload;
    crack.c_mm += dc;
    crack.a_mm += da;
    crack.cycles += 1;
  }
  return 'reached';
}

export const begin = (c_mm: number, a_mm: number): Running => ({
  cycles: 0,
  c_mm,
  a_mm,
  c_overload: null,
  a_overload: null,
});
