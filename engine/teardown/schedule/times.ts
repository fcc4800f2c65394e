import { type RandomSource, randomSource } from '../../foundation/random.ts';
import type { Operation, ScheduledOperation } from '../model.ts';
import type { ThreePoint } from '../structure-document.ts';

/** Times are planned in steps of so many minutes, rounded up. */
export const STEP_MIN = 5;
/** Against sums like 8.999999999 or 5.0000000001. */
const HAIR = 1e-6;

/** Rounded up to whole steps. */
export const inSteps = (minutes: number): number => Math.ceil(minutes / STEP_MIN - HAIR) * STEP_MIN || 0;

/** (a + 4 m + b) / 6 @see Malcolm, Roseboom, Clark, Fazar, Operations Research 7 (1959): the mean of three estimates */
export const meanMinutes = ({ low_min, likely_min, high_min }: ThreePoint): number =>
  (low_min + 4 * likely_min + high_min) / 6;

/** Minutes that an operation is planned with. */
export const plannedMinutes = (operation: Pick<Operation, 'minutes'>): number =>
  inSteps(meanMinutes(operation.minutes));

/** Our own hands work on it. Drying and curing, and what the installer does, run on the clock. */
export const takesHands = (operation: Pick<Operation, 'unattended' | 'who'>): boolean =>
  !operation.unattended && operation.who === 'shop';

/** Shape of the times of one operation, made once for all draws. */
export interface Times {
  readonly low: number;
  readonly spread: number;
  readonly alpha: number;
  readonly beta: number;
  /** The shared cause acts on it: hands do, drying does not. */
  readonly shared: boolean;
  readonly planned: number;
}
export function timesOf(operation: Operation): Times {
  const { low_min, likely_min, high_min } = operation.minutes;
  const spread = high_min - low_min;
  return {
    low: low_min,
    spread,
    alpha: spread > 0 ? 1 + (4 * (likely_min - low_min)) / spread : 1,
    beta: spread > 0 ? 1 + (4 * (high_min - likely_min)) / spread : 1,
    shared: takesHands(operation),
    planned: plannedMinutes(operation),
  };
}

/**
 * Minutes of every operation in one run.
 *
 * What: each time is drawn from the beta-PERT distribution of its three points, which has the mean that is planned with;
 * the times of hands are then multiplied by one factor of the run, what all of them share (crew, access, weather).
 * How: the factor is lognormal with mean 1: exp(s z − s²/2). A beta is a ratio of gammas. Draws are keyed (seed, run).
 * Not valid for: times that hang together in another way than by this factor.
 * @param common standard deviation of the logarithm of the factor
 * @see shopfloor reference, estimating: α = 1 + 4(m−a)/(b−a), β = 1 + 4(b−m)/(b−a); Johnson, Kotz, Balakrishnan,
 *   Continuous Univariate Distributions 2, on gamma ratios (from memory)
 */
export function drawMinutes(
  times: readonly Times[],
  common: number,
  seed: number,
  run: number,
  into: Float64Array,
): void {
  const random = randomSource(seed, run);
  const factor = common > 0 ? Math.exp(common * random.normal() - (common * common) / 2) : 1;
  for (let i = 0; i < times.length; i++) {
    const t = times[i]!;
    const own = t.spread > 0 ? t.low + t.spread * betaOf(random, t.alpha, t.beta) : t.low;
    into[i] = inSteps(t.shared ? own * factor : own);
  }
}
function betaOf(random: RandomSource, alpha: number, beta: number): number {
  const x = random.gamma(alpha);
  const y = random.gamma(beta);
  return x + y > 0 ? x / (x + y) : 0.5;
}

export const lengthOf = (o: Pick<ScheduledOperation, 'start_min' | 'end_min'>): number => o.end_min - o.start_min;
