import { MPA_PER_KSI } from '../foundation/convert.ts';
import type { Known } from '../foundation/provenance.ts';
import { Refusal } from '../foundation/refusal.ts';
import type { UsageDocument } from './document.ts';
import type { LifeCurve } from './life-curve.ts';

const fitted = (
  id: string,
  name: string,
  stressConcentration: number,
  [a1, a2, a3, a4_ksi]: readonly [number, number, number, number],
  standardError: number | null,
  figure: string,
  known: Known,
): LifeCurve & { readonly id: string } => ({
  id,
  name,
  a1,
  a2,
  a3,
  a4_MPa: a4_ksi * MPA_PER_KSI,
  stressConcentration,
  standardError,
  from: { source: 'MIL-HDBK-5J', edition: '2003', place: `figure ${figure}`, known },
});

/**
 * Fits of fatigue tests at constant load, gross or net stress as the figure has it. What is marked memory was not read
 * and decides nothing.
 */
export const LIFE_CURVES = [
  fitted('2024-t3-kt1', '2024-T3 sheet, unnotched', 1, [11.1, -3.97, 0.56, 15.8], 0.38, '3.2.3.1.8(e)', 'second-hand'),
  fitted('2024-t3-kt1-5', '2024-T3 sheet, Kt 1.5', 1.5, [7.5, -2.13, 0.66, 23.7], null, '3.2.3.1.8(f)', 'memory'),
  fitted('2024-t3-kt2', '2024-T3 sheet, Kt 2', 2, [9.2, -3.33, 0.68, 12.3], 0.27, '3.2.3.1.8(g)', 'second-hand'),
  fitted('2024-t3-kt4', '2024-T3 sheet, Kt 4', 4, [8.3, -3.3, 0.66, 8.5], null, '3.2.3.1.8(h)', 'memory'),
  fitted('2024-t3-kt5', '2024-T3 sheet, Kt 5', 5, [8.9, -3.73, 0.56, 3.9], null, '3.2.3.1.8(i)', 'memory'),
  fitted('7075-t6-kt1', '7075-T6 sheet, unnotched', 1, [14.86, -5.8, 0.49, 0], 0.41, '3.7.6.1.8(d)', 'second-hand'),
  fitted('7075-t6-kt2', '7075-T6 sheet, Kt 2', 2, [7.5, -2.46, 0.54, 18.6], 0.31, '3.7.6.1.8(f)', 'second-hand'),
  fitted('7050-t7451-kt3', '7050-T7451 plate, Kt 3', 3, [10, -3.96, 0.64, 0], 0.248, '3.7.4.2.8(f)', 'second-hand'),
  fitted('2024-t4-kt1', '2024-T4 bar, unnotched', 1, [20.83, -9.09, 0.52, 0], null, '3.2.3.1.8(a)', 'memory'),
  fitted('2024-t4-kt1-6', '2024-T4 bar, Kt 1.6', 1.6, [12.25, -5.16, 0.57, 18.7], null, '3.2.3.1.8(b)', 'memory'),
  fitted('2024-t4-kt2-4', '2024-T4 bar, Kt 2.4', 2.4, [14.33, -6.35, 0.48, 3.2], null, '3.2.3.1.8(c)', 'memory'),
  fitted('2014-t6-kt1', '2014-T6, unnotched', 1, [21.49, -9.44, 0.67, 0], null, '3.2.1.1.8(a)', 'memory'),
  fitted('6061-t6-kt1', '6061-T6, unnotched', 1, [20.68, -9.84, 0.63, 0], null, '3.6.2.2.8', 'memory'),
  fitted('7075-t6-bar-kt1', '7075-T6 bar, unnotched', 1, [18.21, -7.73, 0.62, 10], null, '3.7.6.1.8(a)', 'memory'),
] as const;

/** @throws Refusal `usage.curve-unknown` */
export function libraryCurve(id: string): LifeCurve {
  const found = LIFE_CURVES.find((c) => c.id === id);
  if (found) return found;
  throw new Refusal('usage.curve-unknown', {
    given: `at life.curve.library "${id}"`,
    allowed: `one of ${LIFE_CURVES.map((c) => c.id).join(', ')}, or a fit with its own constants and source`,
    remedy: 'Choose one of these, or type the constants of the fit with its source',
  });
}

/** The life curve of a document. @throws Refusal `usage.curve-unknown` */
export function lifeCurveOf(document: UsageDocument): LifeCurve {
  const c = document.life.curve;
  if ('library' in c) return libraryCurve(c.library);
  const { a1, a2, a3, a4_MPa, name, from } = c;
  return { name, a1, a2, a3, a4_MPa, stressConcentration: c.stress_concentration, standardError: null, from };
}
