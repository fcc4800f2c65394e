import {
  KG_PER_M3_PER_SLUG_PER_FT3,
  KG_PER_POUND,
  M_PER_S_PER_KNOT,
  METRES_PER_FOOT,
  MM_PER_INCH,
  MPA_PER_KSI,
  MPA_PER_PSI,
  MPA_SQRT_M_PER_KSI_SQRT_IN,
  N_PER_POUND_FORCE,
  PA_PER_PSF,
} from './convert.ts';
import { Refusal } from './refusal.ts';

/** Ends of field names in other units, and the field in engine units that they stand for. Longest first. */
const OTHER_UNITS: readonly (readonly [end: string, engine: string, factor: number])[] = [
  ['_slug_per_ft3', '_kg_per_m3', KG_PER_M3_PER_SLUG_PER_FT3],
  ['_ksi_sqrt_in', '_MPa_sqrt_m', MPA_SQRT_M_PER_KSI_SQRT_IN],
  ['_g_per_ft_per_s', '_g_per_m_per_s', 1 / METRES_PER_FOOT],
  ['_ft_per_s', '_m_per_s', METRES_PER_FOOT],
  ['_ksi', '_MPa', MPA_PER_KSI],
  ['_psi', '_MPa', MPA_PER_PSI],
  ['_psf', '_Pa', PA_PER_PSF],
  ['_lbf', '_N', N_PER_POUND_FORCE],
  ['_lb', '_kg', KG_PER_POUND],
  ['_kt', '_m_per_s', M_PER_S_PER_KNOT],
  ['_in', '_mm', MM_PER_INCH],
  ['_ft', '_m', METRES_PER_FOOT],
];
/** What is left of a field without its unit; null where the end is only a part of a unit: `g_per_kt` is no speed. */
function stemOf(field: string, end: string): string | null {
  const stem = field.endsWith(end) ? field.slice(0, -end.length) : '';
  return stem === '' || /_(per|sqrt)$/.test(stem) ? null : stem;
}
const otherUnit = (field: string) => OTHER_UNITS.find(([end]) => stemOf(field, end) !== null);

/** A figure, or a list of figures and of lists of them; what else stands in such a list is left to the schema. */
const isFigures = (value: unknown): boolean =>
  typeof value === 'number' ||
  (Array.isArray(value) && value.every((x) => x === null || typeof x !== 'object' || isFigures(x)));
const times = (value: unknown, factor: number): unknown =>
  typeof value === 'number' ? value * factor : Array.isArray(value) ? value.map((x) => times(x, factor)) : value;

/**
 * The same document with every figure in engine units: `depth_in: 0.05` becomes `depth_mm: 1.27`, and so does each
 * figure of a list, `cycles_ksi: [[12, 1]]`. A field says its unit by its end; there is no default. Figures that are
 * not numbers stay for the schema to refuse.
 * @throws Refusal `foundation.two-units` where one figure is given in two units
 */
export function inEngineUnits(input: unknown): unknown {
  if (Array.isArray(input)) return input.map(inEngineUnits);
  if (input === null || typeof input !== 'object') return input;
  const made: Record<string, unknown> = {};
  for (const [field, value] of Object.entries(input)) {
    const named = otherUnit(field);
    const other = named && isFigures(value) ? named : undefined;
    const name = other ? field.slice(0, -other[0].length) + other[1] : field;
    if (Object.hasOwn(made, name) || (name !== field && Object.hasOwn(input, name)))
      throw new Refusal('foundation.two-units', {
        given: `"${field}" beside the same figure in another unit`,
        allowed: 'each figure once, in one unit',
        remedy: 'Leave one of the two out',
      });
    made[name] = other ? times(value, other[2]) : inEngineUnits(value);
  }
  return made;
}

/** `depth_in`: `depth_mm`; a field in engine units, or without unit, is itself. */
export const engineNameOf = (field: string): string => {
  const other = otherUnit(field);
  return other ? field.slice(0, -other[0].length) + other[1] : field;
};

/** Names under which a field in engine units may be given as well, for schemas that are published: `depth_mm` also as `depth_in`. */
export const otherNamesOf = (field: string): string[] =>
  OTHER_UNITS.flatMap(([end, engine]) => {
    const stem = stemOf(field, engine);
    return stem === null ? [] : [stem + end];
  });
