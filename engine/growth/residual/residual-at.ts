import type { CrackForm, CrackSize, ResidualPoint } from '../model.ts';
import { fracture, type Strength } from './fracture.ts';
import { netSectionYield } from './net-section.ts';
import { feddersen, type Tangent } from './tangent.ts';

/**
 * What the place still carries with a crack of a size: the lowest of fracture, Feddersen's tangent and net section yield.
 *
 * Fracture holds the tangent: both are the crack's doing.
 *
 * Not valid for part-through cracks in tough thin stock, where the crack comes through before it breaks the part.
 *
 * @param form a crack in its place; sizes without depth go on as its through crack
 * @param size mm
 * @param strength yield stress, MPa, and toughness, MPa√m, at this thickness
 * @returns remote stresses, MPa, and which governs
 * @throws Refusal `growth.not-positive`, `growth.outside-solution`
 * @see [DT737] lectures 8 and 9
 */
export const residualAt = (form: CrackForm, size: CrackSize, strength: Strength): ResidualPoint =>
  residualOf(form, strength)(size);

/** The same for many sizes: the tangent is found once. */
export function residualOf(form: CrackForm, strength: Strength): (size: CrackSize) => ResidualPoint {
  const through = form.tips === 1 ? form : form.through;
  const tangent: Tangent | null = through && !strength.elastic ? feddersen(through, strength) : null;
  return (size) => {
    const isThrough = size.a_mm === undefined;
    const at = isThrough && through ? through : form;
    const line = isThrough && tangent ? tangent.at(size.c_mm) : Number.POSITIVE_INFINITY;
    const fracture_MPa = Math.min(fracture(at, size, strength), line);
    const net_section_MPa = netSectionYield(at, size, strength.yield_MPa);
    return {
      c_mm: size.c_mm,
      a_mm: size.a_mm ?? null,
      fracture_MPa,
      net_section_MPa,
      governs: fracture_MPa < net_section_MPa ? 'fracture' : 'net section yield',
    };
  };
}

/** What governs, as a stress, MPa. */
export const carried = (point: ResidualPoint): number => Math.min(point.fracture_MPa, point.net_section_MPa);
