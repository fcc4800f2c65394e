import { Refusal } from '../../foundation/refusal.ts';
import { spectrumOf } from '../../usage/index.ts';
import type { GrowthDocument } from '../document.ts';
import type { HourlyCycle, Until } from '../integrate/index.ts';
import { materialOf } from '../material/index.ts';
import type { CrackForm, CrackSize, GrowthLaw, Material, ResidualPoint } from '../model.ts';
import { carried, residualOf, type Strength } from '../residual/index.ts';
import { crackForm } from '../stress-intensity/index.ts';

/** A growth document as figures: the place, the material, what works it and what it must carry. */
export interface Problem {
  readonly form: CrackForm;
  readonly material: Material;
  readonly law: GrowthLaw;
  readonly strength: Strength;
  readonly cycles: readonly HourlyCycle[];
  readonly first: CrackSize;
  readonly detectable: CrackSize;
  /** What must be carried, MPa: limit load, or what the loading itself reaches as often as limit load, if that is more. */
  readonly limit_MPa: number;
}

/** Limit load is met so often an hour; what comes as often or oftener must be carried. @see 14 CFR 25, appendix G */
const LIMIT_PER_HOUR = 2e-5;

/** The highest stress that is reached at least as often as limit load, MPa. */
function reachedAsOften(cycles: readonly HourlyCycle[]): number {
  let times = 0;
  for (const s of [...cycles].sort((a, b) => b.max_MPa - a.max_MPa)) {
    times += s.perHour;
    if (times >= LIMIT_PER_HOUR) return s.max_MPa;
  }
  return 0;
}

/** What of a problem is tried otherwise, each a factor. */
export interface Change {
  readonly stress?: number;
  readonly rate?: number;
  readonly first?: number;
  readonly detectable?: number;
  readonly toughness?: number;
  readonly yield?: number;
  readonly width?: number;
  readonly thickness?: number;
  readonly diameter?: number;
}

export function problemOf(d: GrowthDocument, cycles: readonly HourlyCycle[], change: Change = {}): Problem {
  const { stress = 1, rate = 1 } = change;
  const form = crackForm(changedGeometry(d.geometry, change), d.factors ?? [], d.compounded ?? 'product');
  const material = materialOf(d.material);
  const scaled =
    stress === 1 ? cycles : cycles.map((s) => ({ ...s, max_MPa: s.max_MPa * stress, min_MPa: s.min_MPa * stress }));
  return {
    form,
    material,
    law: rate === 1 ? material.law : faster(material.law, rate),
    strength: {
      yield_MPa: material.yield_MPa * (change.yield ?? 1),
      toughness_MPa_sqrt_m: material.toughnessAt(form.thickness_mm).value * (change.toughness ?? 1),
    },
    cycles: scaled,
    first: sized(d.first_flaw, change.first ?? 1),
    detectable: sized(d.detectable, change.detectable ?? 1),
    limit_MPa: Math.max((d.limit_stress?.stress_MPa ?? 0) * stress, reachedAsOften(scaled)),
  };
}

const sized = ({ c_mm, a_mm }: CrackSize, by: number): CrackSize => ({
  c_mm: c_mm * by,
  ...(a_mm === undefined ? {} : { a_mm: a_mm * by }),
});
const faster = (law: GrowthLaw, by: number): GrowthLaw => ({
  ...law,
  rate: (kMax, kMin) => by * law.rate(kMax, kMin),
  power: law.power && { ...law.power, c: law.power.c * by, weight: law.power.weight },
});
function changedGeometry(g: GrowthDocument['geometry'], c: Change): GrowthDocument['geometry'] {
  return {
    ...g,
    width_mm: g.width_mm * (c.width ?? 1),
    thickness_mm: g.thickness_mm * (c.thickness ?? 1),
    ...('diameter_mm' in g ? { diameter_mm: g.diameter_mm * (c.diameter ?? 1) } : {}),
  } as GrowthDocument['geometry'];
}

/** What the place carries with a crack, and how far that is from what it must carry. */
export function carriedBy({ form, strength, limit_MPa }: Problem) {
  const residual = residualOf(form, strength);
  const at = (size: CrackSize): ResidualPoint | null => {
    try {
      return residual(size);
    } catch (e) {
      if (e instanceof Refusal) return null;
      throw e;
    }
  };
  const margin: NonNullable<Until['margin']> = (_, size) => {
    const point = at(size);
    return point ? carried(point) / limit_MPa - 1 : 1;
  };
  return { at, margin };
}

/** Cycles an hour of one use. */
export const cyclesOfUse = (usage: Parameters<typeof spectrumOf>[0], use: string): HourlyCycle[] =>
  spectrumOf(usage, use).bands.map(({ max_MPa, min_MPa, perHour }) => ({ max_MPa, min_MPa, perHour }));
