import type { Interaction } from '../document.ts';
import { effectiveCycle } from '../interaction/index.ts';
import type {
  CrackForm,
  CrackSize,
  CycleSequence,
  EndOfGrowth,
  GrowthCurve,
  GrowthLaw,
  GrowthPoint,
} from '../model.ts';
import { plasticZone } from '../residual/index.ts';
import { pointAt } from './curve.ts';
import { checkSequence } from './hourly.ts';
import type { CycleKernel, KernelInput, Until } from './model.ts';
import { deepestOf, sizeOf } from './path.ts';
import { begin, type Running, run, type Stopped } from './run.ts';

export interface CycleOptions {
  readonly interaction?: Interaction;
  /** Wanted by interaction: the plastic zone. */
  readonly yield_MPa?: number;
  /** Stops unfinished after so many cycles; the answer then says `asked cycles`. */
  readonly most?: number;
  /** A faster doer for the part-through stretch, with the numbers that the form and the law are made of. */
  readonly kernel?: { readonly run: CycleKernel } & Pick<KernelInput, 'geometry' | 'law'>;
}

const MOST = 20_000_000;
/** The critical size is looked for whenever the crack has grown by this share, then ever finer, down to one cycle. */
const LOOK_AFTER = 0.01;
const FINER = 0.05;
/** A short sequence is run over and over for so many cycles before it is asked whether anything grew. */
const AT_A_TIME = 100_000;

/**
 * Grows a crack cycle by cycle, each cycle acting on the next as the interaction says; the sequence is repeated.
 *
 * The readable reference: K at the size before each cycle, the growth of the cycle added to it. A faster doer may be
 * handed in; critical size, end of the solution and the through crack stay with this form.
 *
 * Not valid for growth of a good part of the crack's length in one cycle: the cycle is over before its K has changed.
 *
 * @param sequence MPa, in order, and the hours it stands for
 * @param from size at the start, mm; no overload is remembered then
 * @returns the curve; `asked cycles` where it was stopped before anything ended it
 * @throws Refusal `growth.no-cycles`, `growth.stress-ratio`, `growth.outside-solution` where `from` is outside
 * @see docs/methods/growth.md, Integration
 */
export function growCycleByCycle(
  form: CrackForm,
  law: GrowthLaw,
  sequence: CycleSequence,
  from: CrackSize,
  until: Until,
  options: CycleOptions = {},
): GrowthCurve {
  const highest = checkSequence(sequence);
  const length = sequence.max_MPa.length;
  const most = Math.min(until.cycles ?? Number.POSITIVE_INFINITY, options.most ?? MOST);
  const interaction = options.interaction ?? { as: 'none' };
  const felt = effectiveCycle(interaction, options.yield_MPa ?? 0);
  const passes = Math.max(1, Math.ceil(AT_A_TIME / length)) * length;
  form.k(from);

  let now = form;
  let crack = begin(from.c_mm, from.a_mm ?? 0);
  let evaluations = 0;
  let through: GrowthPoint | null = null;
  let share = LOOK_AFTER;
  const hours = (cycles: number) => (cycles / length) * sequence.hours;
  const point = () => pointAt(now, [crack.c_mm, crack.a_mm, hours(crack.cycles)], highest, crack.cycles);
  const critical = (r: Running) =>
    until.margin !== undefined && until.margin(now, sizeOf(now, [r.c_mm, r.a_mm, 0])) <= 0;
  const points = [point()];

  const advance = (r: Running, to: KernelInput['until']): [Running, Stopped] => {
    if (options.kernel && now === form && now.tips === 2) {
      const { run: kernel, geometry, law: constants } = options.kernel;
      const acting = asNumbers(interaction, options.yield_MPa ?? 0);
      const { max_MPa, min_MPa } = sequence;
      const made = kernel({ geometry, law: constants, interaction: acting, max_MPa, min_MPa, from: r, until: to });
      if (made.cycles > r.cycles) return [{ ...made }, 'reached'];
    }
    const next: Running = { ...r };
    return [next, run(now, law, felt, sequence, next, to)];
  };
  const ended = ((): EndOfGrowth => {
    if (critical(crack)) return 'critical';
    for (;;) {
      if (until.c_mm !== undefined && crack.c_mm >= until.c_mm) return 'asked size';
      if (crack.cycles >= most) return 'asked cycles';
      const to = {
        c_mm: Math.min(until.c_mm ?? Number.POSITIVE_INFINITY, crack.c_mm * (1 + share)),
        a_mm: now.tips === 2 ? Math.min(deepestOf(now), crack.a_mm * (1 + share)) : Number.POSITIVE_INFINITY,
        cycles: Math.min(most, crack.cycles + passes),
      };
      const [next, stopped] = advance(crack, to);
      evaluations += next.cycles - crack.cycles;
      if (next.cycles > crack.cycles + 1 && critical(next)) {
        share *= FINER;
        continue;
      }
      const still = next.c_mm === crack.c_mm && next.a_mm === crack.a_mm && next.cycles - crack.cycles === passes;
      const far = next.c_mm > points.at(-1)!.c_mm * 1.02 || next.a_mm > (points.at(-1)!.a_mm ?? 0) * 1.02;
      crack = next;
      if (far) points.push(point());
      if (critical(crack)) return 'critical';
      if (stopped !== 'reached') return stopped === 'broken' ? 'critical' : 'ligament';
      if (still) return 'no growth';
      if (now.tips === 2 && now.through && crack.a_mm >= deepestOf(now)) {
        crack.a_mm = deepestOf(now);
        through = point();
        now = now.through;
        share = LOOK_AFTER;
        crack.a_mm = 0;
        if (critical(crack)) return 'critical';
        if (now.outside({ c_mm: crack.c_mm }) !== null) return 'ligament';
        points.push(point());
      }
    }
  })();
  if (points.at(-1)!.cycles !== crack.cycles) points.push(point());
  return {
    points,
    ended,
    hours: hours(crack.cycles),
    cycles: crack.cycles,
    errorBound: 0,
    evaluations,
    by: 'cycle by cycle',
    through,
  };
}

function asNumbers(i: Interaction, yield_MPa: number): KernelInput['interaction'] {
  if (i.as === 'none') return i;
  const zone = plasticZone(1, yield_MPa, `plane ${i.plane}`).radius_mm;
  if (i.as === 'wheeler') return { as: i.as, exponent: i.exponent, zone };
  const { threshold_MPa_sqrt_m, shut_off_ratio } = i;
  return { as: i.as, threshold_MPa_sqrt_m, shut_off_ratio, zone };
}
