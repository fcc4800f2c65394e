import { betaI, gammaQ, normalQuantile } from './distributions.ts';
import { blur, type HabitKnown, RATES } from './habit.ts';
import { DAYS_PER_YEAR, HORIZON_YEARS, LEAN, LUMPS_H, WANDER_FADES_YEARS, WANDERS } from './prior.ts';
import { operationalDays } from './season.ts';

const NEGLIGIBLE = 3e-5;

/** Chance that what is flown in so much operational time reaches `left`, one rate and lumpiness. */
function reaches(known: HabitKnown, shape: number, lump: number, left: number): number {
  if (known.counted.is === 'count')
    return betaI(left, shape, (lump * known.counted.scale) / (1 + lump * known.counted.scale));
  const need = left / (known.counted.scale * lump);
  const away = (need - shape) / Math.sqrt(shape + need * 0.1);
  return away > 12 ? 0 : away < -12 ? 1 : gammaQ(shape, need);
}

/**
 * Chance that `left` has been flown so many days after the last reading.
 *
 * A log rate that walks on has over a span t a mean with the variance s^2 t / 3, and the mean of its exponential
 * lies above by s^2 t / 12 in the logarithm; the weights are spread and moved by that. A season that the record
 * could not show moves the clock of the flying by up to its depth / pi of a year, back or forth: half the weight each.
 *
 * @param from day number of the last reading
 * @param left what remains in the unit of the count, above 0
 */
export function chanceReached(known: HabitKnown, from: number, left: number, days: number): number {
  if (days <= 0) return 0;
  const calendar = days / DAYS_PER_YEAR;
  const years = ((1 + LEAN) * operationalDays(known.season, from, from + days)) / DAYS_PER_YEAR;
  const unseen = (known.seasonUnseen / Math.PI) * Math.SQRT1_2 * Math.abs(Math.sin(Math.PI * calendar));
  const clocks = unseen < 0.004 ? [years] : [Math.max(0, years - unseen), years + unseen];
  const wandering = calendar / (1 + calendar / WANDER_FADES_YEARS);
  let chance = 0;
  LUMPS_H.forEach((lump, b) => {
    const w = new Float64Array(RATES.length);
    WANDERS.forEach((s, i) => {
      const part = blur(known.weights[b]![i]!, s * Math.sqrt(wandering / 3), (s * s * wandering) / 12);
      for (let k = 0; k < w.length; k++) w[k] = w[k]! + part[k]!;
    });
    for (let k = 0; k < w.length; k++)
      if (w[k]! > NEGLIGIBLE)
        for (const t of clocks)
          if (t > 0) chance += (w[k]! / clocks.length) * reaches(known, (RATES[k]! * t) / lump, lump, left);
  });
  return Math.min(1, chance);
}

/** Days after the last reading on which the chance reaches p; null: not within the horizon. Found on log days against normal scores. */
export function daysUntil(known: HabitKnown, from: number, left: number, p: number): number | null {
  if (left <= 0) return 0;
  const score = (days: number) =>
    normalQuantile(Math.min(1 - 1e-9, Math.max(1e-9, chanceReached(known, from, left, days))));
  const goal = normalQuantile(p);
  const horizon = HORIZON_YEARS * DAYS_PER_YEAR;
  let [a, b] = [0, Math.log(horizon)];
  let [fa, fb] = [score(1) - goal, score(horizon) - goal];
  if (fb < 0) return null;
  if (fa >= 0) return 1;
  let kept = 0;
  for (let i = 0; i < 40 && Math.exp(b) - Math.exp(a) > 0.5; i++) {
    // Regula falsi, the end that stays kept halved (Illinois); every third step a plain halving.
    let m = i % 3 === 2 ? (a + b) / 2 : (a * fb - b * fa) / (fb - fa);
    m = Math.min(b - 1e-7, Math.max(a + 1e-7, m));
    const fm = score(Math.exp(m)) - goal;
    if (Math.abs(fm) < 2e-4) return Math.exp(m);
    if (fm < 0) {
      [a, fa] = [m, fm];
      if (kept === -1) fb /= 2;
      kept = -1;
    } else {
      [b, fb] = [m, fm];
      if (kept === 1) fa /= 2;
      kept = 1;
    }
  }
  return Math.exp(b);
}
