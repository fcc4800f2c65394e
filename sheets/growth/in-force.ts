import type { growth } from '../../engine/index.ts';

type Answer = growth.GrowthAnswer;
/** An interval as it is shown: never longer than what is in force; `by` names the directive that cuts it. */
export interface Shown {
  readonly hours: number;
  readonly by: string | null;
}
export interface ShownProgramme {
  readonly first: Shown;
  readonly repeat: Shown;
}

/** The shorter of the two; the directive where they are alike. */
export function shorter(a: Answer, computed_h: number, of: 'first_at_h' | 'repeat_h'): Shown {
  let shown: Shown = { hours: computed_h, by: null };
  for (const limit of a.inForce) {
    const hours = limit[of];
    if (hours !== null && (hours < shown.hours || (hours === shown.hours && shown.by === null)))
      shown = { hours, by: limit.name };
  }
  return shown;
}
export function shownProgramme(a: Answer, p: growth.Programme | null): ShownProgramme | null {
  if (!p || a.gives === 'ratios') return null;
  return { first: shorter(a, p.first_h, 'first_at_h'), repeat: shorter(a, p.repeat_h, 'repeat_h') };
}
/** What is left to the next look, the worse side: of the directives first, else of the estimate. */
export function leftShown(a: Answer): Shown | null {
  if (a.gives === 'ratios') return null;
  let shown: Shown | null = a.left_h ? { hours: a.left_h.low, by: null } : null;
  for (const limit of a.inForce)
    if (limit.left_h !== null && (!shown || limit.left_h <= shown.hours))
      shown = { hours: limit.left_h, by: limit.name };
  return shown;
}
export const namesInForce = (a: Answer): string[] => [...new Set(a.inForce.map((i) => i.name))];
