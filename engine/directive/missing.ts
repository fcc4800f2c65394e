import { addForms, type LinearForm } from '../foundation/region/index.ts';
import type { Life } from '../record/index.ts';
import { type Expression, factsOf } from './expression/index.ts';
import { formsOf, type Situation } from './situation.ts';

/** Gaps whose figures the limit depends on. */
export function gapsBehind(life: Life, s: Situation, e: Expression): Life['gaps'] {
  const forms = formsOf(s);
  const touched = new Set(factsOf(e).flatMap((n) => forms(n, true).terms.map(([v]) => v)));
  return life.gaps.filter((g) => g.variables.some((v) => touched.has(v) && open(life, v)));
}
const open = (life: Life, v: number): boolean => life.region.variables[v]!.low < life.region.variables[v]!.high;

/** `assume the use`: hours and landings of a stretch without papers are counted as that use. */
export function assumeUse(life: Life, use: string) {
  const inGap = new Set(life.gaps.flatMap((g) => g.variables));
  const split = (f: LinearForm, gap: boolean): LinearForm => ({
    constant: gap ? 0 : f.constant,
    terms: f.terms.filter(([v]) => inGap.has(v) === gap),
  });
  return (form: LinearForm, name: string, facts: Readonly<Record<string, LinearForm>>): LinearForm => {
    const m = /^(hours|landings)\.(.+)$/.exec(name);
    if (!m || m[2] === 'total') return form;
    if (m[2] !== use) return split(form, false);
    const others = Object.keys(facts).filter((n) => n.startsWith(`${m[1]}.`) && n !== name && n !== `${m[1]}.total`);
    return addForms(form, ...others.map((n) => split(facts[n]!, true)));
  };
}

/** A life with one gap's figures fixed, as if its paper had been found and said this. */
export function found(s: Situation, variables: readonly number[], witness: readonly number[]): Situation {
  const fixed = new Set(variables);
  return {
    ...s,
    region: {
      ...s.region,
      variables: s.region.variables.map((v, i) =>
        fixed.has(i) && witness[i] !== undefined
          ? { ...v, low: Math.max(v.low, witness[i]! - 1e-7), high: Math.min(v.high, witness[i]! + 1e-7) }
          : v,
      ),
    },
  };
}
