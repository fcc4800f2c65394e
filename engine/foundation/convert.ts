import { Refusal } from './refusal.ts';
import { type FlownSeconds, flownSeconds } from './units.ts';

/** The only file that holds conversion factors. Inch, pound and standard gravity are exact by definition (international yard and pound agreement, 1959; 3rd CGPM, 1901). */
export const MM_PER_INCH = 25.4;
export const KG_PER_POUND = 0.45359237;
export const STANDARD_GRAVITY_M_PER_S2 = 9.80665;
export const N_PER_POUND_FORCE = KG_PER_POUND * STANDARD_GRAVITY_M_PER_S2;
export const MM_PER_METRE = 1000;
export const METRES_PER_FOOT = 0.3048;
/** International knot, exact (1st International Extraordinary Hydrographic Conference, 1929). */
export const M_PER_S_PER_KNOT = 1852 / 3600;
export const MPA_PER_PSI = N_PER_POUND_FORCE / (MM_PER_INCH * MM_PER_INCH);
export const MPA_PER_KSI = 1000 * MPA_PER_PSI;
/** ksi√in to MPa√m. */
export const MPA_SQRT_M_PER_KSI_SQRT_IN = MPA_PER_KSI * Math.sqrt(MM_PER_INCH / MM_PER_METRE);
export const PA_PER_PSF = N_PER_POUND_FORCE / (METRES_PER_FOOT * METRES_PER_FOOT);
/** Density: slug/ft³ to kg/m³. A slug is a pound-force second squared per foot. */
export const KG_PER_M3_PER_SLUG_PER_FT3 =
  N_PER_POUND_FORCE / (METRES_PER_FOOT * METRES_PER_FOOT * METRES_PER_FOOT * METRES_PER_FOOT);
export const SECONDS_PER_HOUR = 3600;
export const SECONDS_PER_MINUTE = 60;

/** Whole seconds of time flown from decimal hours, rounded to the nearest second. @throws Refusal `foundation.not-finite` */
export const secondsFromHours = (hours: number): FlownSeconds => {
  if (!Number.isFinite(hours))
    throw new Refusal('foundation.not-finite', {
      given: `${hours} h`,
      allowed: 'a finite number of hours',
      remedy: 'Correct the figure',
    });
  return flownSeconds(Math.round(hours * SECONDS_PER_HOUR));
};

/** Decimal hours from seconds of time flown. */
export const hoursFromSeconds = (seconds: number): number => seconds / SECONDS_PER_HOUR;

const CLOCK = /^(-?)(\d+):([0-5]\d)(?::([0-5]\d))?$/;
/**
 * Hours as people write them: decimal (`1234.5`, a number or text) or clock (`1234:30`, `1234:30:15`).
 * @returns whole seconds
 * @throws Refusal `foundation.not-hours`
 */
export function parseHours(written: string | number): FlownSeconds {
  if (typeof written === 'number') return secondsFromHours(written);
  const text = written.trim();
  const clock = CLOCK.exec(text);
  if (clock) {
    const [, sign, h, m, s] = clock;
    const total = Number(h) * SECONDS_PER_HOUR + Number(m) * SECONDS_PER_MINUTE + Number(s ?? 0);
    return flownSeconds(sign === '-' ? -total : total);
  }
  if (/^-?\d+(\.\d+)?$/.test(text)) return secondsFromHours(Number(text));
  throw new Refusal('foundation.not-hours', {
    given: `"${written}"`,
    allowed: 'hours as 1234.5 or 1234:30',
    remedy: 'Write the hours in one of these two forms',
  });
}
