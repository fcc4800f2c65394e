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
function shorter(a: Answer, computed: Shown, of: 'first_at_h' | 'repeat_h'): Shown {
  let shown = computed;
  for (const limit of a.inForce) {
    const hours = limit[of];
    if (hours !== null && (hours < shown.hours || (hours === shown.hours && shown.by === null)))
      shown = { hours, by: limit.name };
  }
  return shown;
}
export function shownProgramme(a: Answer): ShownProgramme | null {
  const p = a.programme;
  if (!p || a.gives === 'ratios') return null;
  return {
    first: shorter(a, { hours: p.first_h, by: p.capped.first }, 'first_at_h'),
    repeat: shorter(a, { hours: p.repeat_h, by: p.capped.repeat }, 'repeat_h'),
  };
}
/** Where all hours are of one use, what is in force there has cut it already. */
export const ofUse = (p: growth.Programme): ShownProgramme => ({
  first: { hours: p.first_h, by: p.capped.first },
  repeat: { hours: p.repeat_h, by: p.capped.repeat },
});
/** The same, never later than what is in force today, whatever the use. */
export const ofUseToday = (a: Answer, p: growth.Programme): ShownProgramme => {
  const { first, repeat } = ofUse(p);
  return { first: shorter(a, first, 'first_at_h'), repeat: shorter(a, repeat, 'repeat_h') };
};
const leftOf = (i: Answer['inForce'][number]): number => i.left_h ?? Number.POSITIVE_INFINITY;
/**
 * What is to be said of a first look that is no longer ahead: a directive's that is overdue or due, else one that the
 * hours flown have passed at the least they can be; null where it is still ahead.
 */
export function noLongerAhead(a: Answer, first: Shown): { readonly said: string; readonly by: string | null } | null {
  const worst = [...a.inForce].sort((x, y) => leftOf(x) - leftOf(y))[0];
  if (worst && worst.left_h !== null && worst.left_h <= 0)
    return { said: worst.left_h < 0 ? 'overdue' : 'due now', by: worst.name };
  return a.flown_h && first.hours < a.flown_h.low ? { said: 'passed', by: first.by } : null;
}
/** The least that a directive leaves; null where none says so. */
export function leftOfDirectives(a: Answer): number | null {
  const all = a.inForce.flatMap((i) => (i.left_h === null ? [] : [i.left_h]));
  return all.length ? Math.min(...all) : null;
}
/** Hours to a look as they are shown, and their places: never rounded up, so that none reads as later than it is. */
export function downward(hours: number): [hours: number, places: number] {
  const places = hours !== 0 && Math.abs(hours) < FEW ? 1 : 0;
  const by = places ? 10 : 1;
  return [Math.floor(hours * by + CLOSE) / by, places];
}
const FEW = 10;
const CLOSE = 1e-6;
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
