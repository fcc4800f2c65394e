import { SECONDS_PER_HOUR } from '../foundation/convert.ts';
import { type Day, daysBetween, type Moment } from '../foundation/day.ts';
import { constantForm, type LinearForm, scaleForm } from '../foundation/region/index.ts';
import { notAfter } from './moments.ts';

/** Part of a life between two cuts, as the facts see it. */
export interface Lived {
  readonly from: Moment;
  readonly to: Moment;
  readonly hours: ReadonlyMap<string, LinearForm>;
  readonly landings: ReadonlyMap<string, LinearForm>;
  readonly totalHours: LinearForm;
  readonly totalLandings: LinearForm;
  readonly inspections: ReadonlyMap<string, LinearForm>;
  readonly kits: readonly string[];
}
export interface Happened {
  readonly what: string;
  readonly moment: Moment;
  readonly entry: string;
}
/** All that facts are made of: lived time, opening, events, counted inspections. */
export interface Story {
  readonly built: Day | null;
  readonly uses: readonly string[];
  readonly kinds: readonly string[];
  readonly kits: readonly string[];
  readonly lived: readonly Lived[];
  readonly events: readonly Happened[];
  readonly inspections: readonly { readonly kind: string; readonly moment: Moment; readonly form: LinearForm }[];
}

class Sums {
  readonly #constants = new Map<string, number>();
  readonly #terms = new Map<string, Map<number, number>>();
  add(name: string, form: LinearForm): void {
    this.#constants.set(name, (this.#constants.get(name) ?? 0) + form.constant);
    if (form.terms.length === 0) return;
    let terms = this.#terms.get(name);
    if (!terms) {
      terms = new Map();
      this.#terms.set(name, terms);
    }
    for (const [v, c] of form.terms) terms.set(v, (terms.get(v) ?? 0) + c);
  }
  facts(): Record<string, LinearForm> {
    const out: Record<string, LinearForm> = {};
    for (const [name, constant] of this.#constants) {
      const terms = [...(this.#terms.get(name) ?? [])].filter(([, c]) => c !== 0).sort((a, b) => a[0] - b[0]);
      const form = { constant, terms };
      out[name] = isHours(name) ? scaleForm(form, 1 / SECONDS_PER_HOUR) : form;
    }
    return out;
  }
}
const isHours = (name: string): boolean => name.startsWith('hours.') || name.endsWith('.hours');
const ZERO = constantForm(0);

/** Facts at a moment. A fact that exists somewhere in the life is zero before it begins; `since` of an event that never happened is absent. */
export function factsAt(story: Story, at: Moment): Record<string, LinearForm> {
  const sums = new Sums();
  for (const name of ['hours.total', 'landings.total']) sums.add(name, ZERO);
  for (const u of story.uses) {
    sums.add(`hours.${u}`, ZERO);
    sums.add(`landings.${u}`, ZERO);
  }
  for (const k of story.kinds) sums.add(`inspections.${k}`, ZERO);
  for (const k of story.kits) {
    sums.add(`kit.${k}.hours`, ZERO);
    sums.add(`kit.${k}.landings`, ZERO);
  }
  const happened = story.events.filter((e) => notAfter(e.moment, at));
  const lastOf = new Map(happened.map((e) => [e.what, e.moment]));
  for (const e of story.events) sums.add(`count.${e.what}`, ZERO);
  for (const e of happened) sums.add(`count.${e.what}`, constantForm(1));
  for (const e of lastOf.keys()) {
    sums.add(`since.${e}.hours`, ZERO);
    sums.add(`since.${e}.landings`, ZERO);
  }
  for (const l of story.lived) {
    if (!notAfter(l.to, at)) continue;
    sums.add('hours.total', l.totalHours);
    sums.add('landings.total', l.totalLandings);
    for (const [u, f] of l.hours) sums.add(`hours.${u}`, f);
    for (const [u, f] of l.landings) sums.add(`landings.${u}`, f);
    for (const [k, f] of l.inspections) sums.add(`inspections.${k}`, f);
    for (const k of l.kits) {
      sums.add(`kit.${k}.hours`, l.totalHours);
      sums.add(`kit.${k}.landings`, l.totalLandings);
    }
    for (const [e, moment] of lastOf)
      if (notAfter(moment, l.from)) {
        sums.add(`since.${e}.hours`, l.totalHours);
        sums.add(`since.${e}.landings`, l.totalLandings);
      }
  }
  for (const i of story.inspections) if (notAfter(i.moment, at)) sums.add(`inspections.${i.kind}`, i.form);
  return sums.facts();
}

export function withAge(facts: Record<string, LinearForm>, built: Day | null, day: Day): Record<string, LinearForm> {
  return built === null ? facts : { ...facts, 'age.days': constantForm(Math.max(0, daysBetween(built, day))) };
}
