import { constantForm, isFeasible, type LinearForm, type Region, variableForm } from '../foundation/region/index.ts';

type Constraint = Region['constraints'][number];
interface Soft extends Constraint {
  readonly entry: string;
}

/** Gathers variables and constraints; what is settled becomes a constant and no variable. */
export class RegionBuilder {
  readonly #variables: Region['variables'][number][] = [];
  readonly #constraints: Constraint[] = [];
  readonly #soft: Soft[] = [];

  get size(): number {
    return this.#variables.length;
  }

  /** A figure between two ends; a constant where they meet. */
  figure(name: string, low: number, high: number, integer = false): LinearForm {
    if (high <= low) return constantForm(low);
    this.#variables.push({ name, low, high, integer });
    return variableForm(this.#variables.length - 1);
  }

  /** low <= form <= high; nothing to hold where the form is settled. */
  hold(name: string, form: LinearForm, low: number, high: number): void {
    if (form.terms.length > 0) this.#constraints.push(constraint(name, form, low, high));
  }

  /** As `hold`, but let go where it contradicts what must hold. */
  holdIfPossible(name: string, form: LinearForm, low: number, high: number, entry: string): void {
    if (form.terms.length > 0) this.#soft.push({ ...constraint(name, form, low, high), entry });
  }

  highOf(variable: number): number {
    return this.#variables[variable]!.high;
  }

  lowOf(variable: number): number {
    return this.#variables[variable]!.low;
  }

  /** The region with every constraint that can hold beside the others, and the entries of those let go. */
  region(): { readonly region: Region; readonly letGo: readonly string[] } {
    const of = (soft: readonly Soft[]): Region => ({
      variables: this.#variables,
      constraints: [...this.#constraints, ...soft.map(({ entry: _, ...c }) => c)],
    });
    const all = of(this.#soft);
    if (this.#soft.length === 0 || isFeasible(all)) return { region: all, letGo: [] };
    const kept: Soft[] = [];
    for (const c of this.#soft) if (isFeasible(of([...kept, c]))) kept.push(c);
    return { region: of(kept), letGo: [...new Set(this.#soft.filter((c) => !kept.includes(c)).map((c) => c.entry))] };
  }
}

const constraint = (name: string, form: LinearForm, low: number, high: number): Constraint => ({
  name,
  terms: form.terms,
  low: low - form.constant,
  high: high - form.constant,
});
