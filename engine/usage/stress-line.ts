import { Refusal } from '../foundation/refusal.ts';
import type { Stress } from './document.ts';

/** Stress at the place, MPa, from load factor in flight and on the ground. */
export interface StressLine {
  readonly flight: (loadFactor: number) => number;
  readonly ground: (loadFactor: number) => number;
  /** Load factors between which flight holds. */
  readonly from: number;
  readonly to: number;
}

const onGround = (at1g: number, perG: number, scale: number) => (n: number) => (at1g + perG * (n - 1)) * scale;

/** A place that is pulled less carries nothing. */
const LEAST_PULL_MPA = 0.001;
/** Stress on a line of points; straight between them. */
function alongPoints(points: readonly { load_factor: number; stress_MPa: number }[], n: number): number {
  let i = points.findIndex((p) => p.load_factor >= n);
  if (i < 0) i = points.length - 1;
  const [a, b] = [points[Math.max(0, i - 1)]!, points[i]!];
  if (a === b) return b.stress_MPa;
  return a.stress_MPa + ((n - a.load_factor) / (b.load_factor - a.load_factor)) * (b.stress_MPa - a.stress_MPa);
}

/**
 * Stress at the place from load factor.
 * @throws Refusal `usage.stress-unknown` where no stress with a source is at hand
 */
export function stressLine(stress: Stress): StressLine {
  if (stress.as === 'unknown')
    throw new Refusal('usage.stress-unknown', {
      given: 'a place whose stress is not known',
      allowed: 'stress per g, or a line of stress against load factor, with its source',
      remedy: 'Add the stress with its source; until then only ratios between uses can be given',
    });
  return scaled(stress, 1);
}

/**
 * The same with the stress at 1 g in flight as 1 MPa: the shape, for ratios.
 * @throws Refusal `usage.line-unfit` where the stress at 1 g is not a pull
 */
export function shapeLine(stress: Stress): StressLine {
  if (stress.as === 'unknown')
    return {
      flight: (n) => n,
      ground: (n) => stress.ground_share * n,
      from: Number.NEGATIVE_INFINITY,
      to: Number.POSITIVE_INFINITY,
    };
  if (stress.as === 'line' && (stress.points[0]!.load_factor > 1 || stress.points.at(-1)!.load_factor < 1))
    throw new Refusal('usage.line-unfit', {
      given: `the line of stress runs from ${stress.points[0]!.load_factor} to ${stress.points.at(-1)!.load_factor} g`,
      allowed: 'a line that reaches 1 g, and every load factor that occurs',
      remedy: 'Add points to the line',
    });
  const at1g = stress.as === 'per_g' ? stress.at_1g_MPa : alongPoints(stress.points, 1);
  if (!(at1g >= LEAST_PULL_MPA))
    throw new Refusal('usage.line-unfit', {
      given: `at place.stress the stress at 1 g in flight is ${at1g} MPa`,
      allowed: `a place that is pulled at 1 g in flight, by ${LEAST_PULL_MPA} MPa or more`,
      remedy: 'Choose a place in tension; a pressed one does not tire by these methods',
    });
  return scaled(stress, 1 / at1g);
}

function scaled(stress: Exclude<Stress, { as: 'unknown' }>, k: number): StressLine {
  const ground = onGround(stress.ground_at_1g_MPa, stress.ground_per_g_MPa ?? stress.ground_at_1g_MPa, k);
  if (stress.as === 'per_g') {
    const perG = stress.per_g_MPa ?? stress.at_1g_MPa;
    return {
      flight: (n) => (stress.at_1g_MPa + perG * (n - 1)) * k,
      ground,
      from: Number.NEGATIVE_INFINITY,
      to: Number.POSITIVE_INFINITY,
    };
  }
  const { points } = stress;
  return {
    flight: (n) => alongPoints(points, n) * k,
    ground,
    from: points[0]!.load_factor,
    to: points.at(-1)!.load_factor,
  };
}
