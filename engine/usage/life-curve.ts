import { MPA_PER_KSI } from '../foundation/convert.ts';
import type { Provenance } from '../foundation/provenance.ts';

/** log10 N = a1 + a2 log10(Seq − a4), Seq = Smax (1 − R)^a3, stresses in ksi in the fit. */
export interface LifeCurve {
  readonly name: string;
  readonly a1: number;
  readonly a2: number;
  readonly a3: number;
  /** Equivalent stress at and below which the fit sees no failure, MPa; 0: every cycle damages. */
  readonly a4_MPa: number;
  readonly stressConcentration: number;
  /** Standard error of log10 N; null where the source gives none. */
  readonly standardError: number | null;
  readonly from: Provenance;
}

/**
 * Equivalent stress of a cycle: the highest stress of a cycle from zero that is as hard.
 *
 * Seq = Smax (1 − R)^a3, written as Smax^(1 − a3) (Smax − Smin)^a3, which holds through Smin < 0. A cycle that never
 * pulls has none.
 *
 * @param max_MPa @param min_MPa highest and lowest stress, pull positive
 * @returns MPa; 0 for a cycle that never pulls, or is none
 * @see MIL-HDBK-5J 9.3.4
 */
export function equivalentStress(max_MPa: number, min_MPa: number, a3: number): number {
  const range = max_MPa - min_MPa;
  if (max_MPa <= 0 || range <= 0) return 0;
  return Math.exp((1 - a3) * Math.log(max_MPa) + a3 * Math.log(range));
}

const ROUNDING = 1e-12;
/** A place that breaks at once lasts no cycle; so many keep its damage a figure. */
const LEAST_CYCLES = 1e-100;
/**
 * Cycles to failure by a fit of equivalent stress.
 *
 * Not valid beyond the fit's data, which end near 10 to 100 million cycles.
 *
 * @returns cycles; Infinity at and under the run-out stress
 */
export function cyclesToFailure(curve: LifeCurve, max_MPa: number, min_MPa: number): number {
  const over = equivalentStress(max_MPa, min_MPa, curve.a3) - curve.a4_MPa;
  if (over <= ROUNDING * curve.a4_MPa) return Number.POSITIVE_INFINITY;
  return Math.max(LEAST_CYCLES, Math.exp(curve.a1 * Math.LN10 + curve.a2 * Math.log(over / MPA_PER_KSI)));
}
