import { MM_PER_INCH } from '../../foundation/convert.ts';
import type { Provenance } from '../../foundation/provenance.ts';

/** Shank beyond the grip that forms the shop head, diameters. */
const HEAD_DIAMETERS = 1.5;
export const SIXTEENTH_MM = MM_PER_INCH / 16;
export const RIVET_LENGTH: Provenance = {
  source: 'NAVEDTRA 14018',
  place: 'figure 13-43: length is the grip and one and a half diameters',
  known: 'read',
};

/** Length of a solid rivet, mm: grip and 1.5 diameters, up to the next length that is made. */
export function rivetLength(
  grip_mm: number,
  diameter_mm: number,
  step_mm = SIXTEENTH_MM,
): { need_mm: number; buy_mm: number } {
  const need_mm = grip_mm + HEAD_DIAMETERS * diameter_mm;
  return { need_mm, buy_mm: Math.ceil(need_mm / step_mm - 1e-9) * step_mm };
}

const STANDARD = /^(MS20426|MS20470)([A-Z]{1,2})(\d{1,2})$/;
/** Standard code with its length in sixteenths, "MS20470AD4-6"; another code as it is. @see AC 43.13-1B paragraph 4-57a, part number breakdown */
export function codeWithLength(code: string, length_mm: number): string {
  const sixteenths = Math.round((length_mm / SIXTEENTH_MM) * 2) / 2;
  return STANDARD.test(code) && Math.abs(sixteenths * SIXTEENTH_MM - length_mm) < 0.05 ? `${code}-${sixteenths}` : code;
}
/** The code one size up: standard rivets go by 1/32 inch. */
export function nextCode(code: string): string {
  const m = STANDARD.exec(code);
  return m ? `${m[1]}${m[2]}${Number(m[3]) + 1}` : `${code}, next size`;
}
