import { eachRainflow } from './counting/rainflow.ts';
import { cyclesToFailure, type LifeCurve } from './life-curve.ts';
import { LOAD_SOURCES, type LoadSource, type StressBand, type StressSequence, type StressSpectrum } from './model.ts';

/** Damage that one cycle does; `level` multiplies the stress. */
export type CycleDamage = (max_MPa: number, min_MPa: number) => number;
export const byLifeCurve =
  (curve: LifeCurve, level = 1): CycleDamage =>
  (max, min) =>
    1 / cyclesToFailure(curve, max * level, min * level);

/**
 * Damage per hour: Σ n / N over the bands (Palmgren and Miner).
 *
 * Not valid where the order of cycles matters; 1 is the mean life, not a safe one.
 *
 * @returns per hour; 0 where no cycle damages
 * @see Wichita State University AE 737 (2022), lecture 14
 */
export const damagePerHour = (bands: readonly StressBand[], damage: CycleDamage): number =>
  bands.reduce((t, b) => t + b.perHour * damage(b.max_MPa, b.min_MPa), 0);

/** Share of the damage by load, adding up to 1, in the order of `LOAD_SOURCES`; empty where nothing damages. */
export function damageShares(s: StressSpectrum, damage: CycleDamage): { load: LoadSource; share: number }[] {
  const all = damagePerHour(s.bands, damage);
  if (all === 0) return [];
  return LOAD_SOURCES.flatMap((load) => {
    const own = s.bands.filter((b) => b.load === load);
    return own.length ? [{ load, share: damagePerHour(own, damage) / all }] : [];
  });
}

/** Damage per hour of a sequence, counted by rainflow. @see ASTM E1049-85 (2017), 5.4.4 */
export function sequenceDamage(s: StressSequence, damage: CycleDamage): number {
  let sum = 0;
  eachRainflow(s.turningPoints_MPa, (a, b, count) => {
    sum += count * damage(Math.max(a, b), Math.min(a, b));
  });
  return sum / s.hours;
}
