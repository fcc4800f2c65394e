import { M_PER_S_PER_KNOT, METRES_PER_FOOT, PA_PER_PSF, STANDARD_GRAVITY_M_PER_S2 } from '../foundation/convert.ts';

/** kg/m³. */
export const SEA_LEVEL_DENSITY = 1.225;
/** 2 / (ρ0 · 1.6878) as the regulation rounds it; wants psf, knots, ft/s. */
const REGULATION_CONSTANT = 498;

export interface GustAeroplane {
  readonly wing_loading_Pa: number;
  readonly mean_chord_m: number;
  readonly lift_slope_per_rad: number;
}
export interface GustResponse {
  /** Mass ratio. */
  readonly mu: number;
  /** Alleviation factor. */
  readonly alleviation: number;
  /** Increment of load factor, g, per m/s of derived gust velocity. */
  readonly perVelocity: number;
}

/**
 * Load factor that a derived gust velocity makes.
 *
 * n = 1 ± Kg Ude V a / (498 (W/S)), Kg = 0.88 μ / (5.3 + μ), μ = 2 (W/S) / (ρ C a g); 498 is the regulation's rounding
 * and holds in pounds per square foot, knots of equivalent airspeed and feet per second.
 *
 * Not valid for a flexible wing, or beyond the stall.
 *
 * @param aeroplane wing loading, Pa; mean chord, m; slope of the normal force curve, per radian
 * @param speed_m_per_s equivalent airspeed
 * @returns mass ratio, alleviation, increment per gust velocity
 * @see 14 CFR 23.341(c) before amendment 64
 */
export function gustResponse(aeroplane: GustAeroplane, speed_m_per_s: number, density_kg_per_m3: number): GustResponse {
  const { wing_loading_Pa, mean_chord_m, lift_slope_per_rad: a } = aeroplane;
  const mu = (2 * wing_loading_Pa) / (density_kg_per_m3 * mean_chord_m * a * STANDARD_GRAVITY_M_PER_S2);
  const alleviation = (0.88 * mu) / (5.3 + mu);
  const knots = speed_m_per_s / M_PER_S_PER_KNOT;
  const perFoot = (alleviation * knots * a) / (REGULATION_CONSTANT * (wing_loading_Pa / PA_PER_PSF));
  return { mu, alleviation, perVelocity: perFoot / METRES_PER_FOOT };
}
