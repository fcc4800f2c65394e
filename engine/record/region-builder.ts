import { constantForm, type LinearForm, type Region, variableForm } from '../foundation/region/index.ts';

/** Gathers variables and constraints; what is settled becomes a constant and no variable. */
export class RegionBuilder {
  readonly #variables: Region['variables'][number][] = [];
  readonly #constraints: Region['constraints'][number][] = [];

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
    if (form.terms.length === 0) return;
    this.#constraints.push({ name, terms: form.terms, low: low - form.constant, high: high - form.constant });
  }

  highOf(variable: number): number {
    return this.#variables[variable]!.high;
  }

  lowOf(variable: number): number {
    return this.#variables[variable]!.low;
  }

  region(): Region {
    return { variables: this.#variables, constraints: this.#constraints };
  }
}
