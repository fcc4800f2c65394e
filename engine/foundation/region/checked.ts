import { Refusal } from '../refusal.ts';
import type { LinearForm, Region } from './model.ts';

/**
 * Looks a region over before anything is computed from it.
 * @throws Refusal `region.variable-unbounded`, `region.variable-empty`, `region.term-invalid`
 */
export function checkRegion(region: Region): void {
  for (const v of region.variables) {
    if (!Number.isFinite(v.low) || !Number.isFinite(v.high))
      throw new Refusal('region.variable-unbounded', {
        given: `${v.name}: ${v.low} to ${v.high}`,
        allowed: 'two finite ends',
        remedy: 'State a ceiling (hours per day, landings per hour, inspections per year) for this stretch',
      });
    if (v.low > v.high || (v.integer && Math.ceil(v.low) > Math.floor(v.high)))
      throw new Refusal('region.variable-empty', {
        given: `${v.name}: ${v.low} to ${v.high}${v.integer ? ', whole numbers' : ''}`,
        allowed: 'a low end not above the high end, with a possible value between them',
        remedy: 'Look for the papers that contradict each other about this figure',
      });
  }
  for (const c of region.constraints) {
    checkTerms(c.name, c.terms, region);
    if (Number.isNaN(c.low) || Number.isNaN(c.high))
      throw new Refusal('region.term-invalid', {
        given: `${c.name}: ${c.low} to ${c.high}`,
        allowed: 'two numbers, of which either may be infinite',
        remedy: 'Look at the line that made this constraint',
      });
  }
}

/** @throws Refusal `region.term-invalid` */
export function checkForm(form: LinearForm, region: Region): void {
  if (!Number.isFinite(form.constant))
    throw new Refusal('region.term-invalid', {
      given: `a figure with the constant ${form.constant}`,
      allowed: 'a finite number',
      remedy: 'Look at the line that made this figure',
    });
  checkTerms('a figure', form.terms, region);
}

function checkTerms(what: string, terms: LinearForm['terms'], region: Region): void {
  for (const [v, c] of terms)
    if (!Number.isFinite(c) || region.variables[v] === undefined)
      throw new Refusal('region.term-invalid', {
        given: `${what}: ${c} times variable ${v} of ${region.variables.length}`,
        allowed: 'a finite coefficient of a variable of this region',
        remedy: 'Look at the line that made this term',
      });
}
