import { Refusal } from '../foundation/refusal.ts';
import { evaluate, type FormOf, factsOf, firstReach, rounded } from './expression/index.ts';
import { flownOn } from './mix.ts';
import type { Mix } from './model.ts';
import { placed, type Situation } from './situation.ts';
import type { Held } from './standing.ts';
import { expressionOf } from './vocabulary.ts';

type Expression = Parameters<typeof evaluate>[0];
type Facts = Readonly<Record<string, number>>;

/** Hours ahead that are looked at, one span after the other: near ones are told apart more finely. */
const SPANS_H = [10, 1_000, 20_000, 200_000, 10_000_000];
/** The solver's place is made exact with the formula itself within this. */
const NEAR_H = 1e-4;

/** Hours of the carrier until each counted limit is used up in one history, flown out with the formula itself. */
export function flownOut(s: Situation, held: readonly Held[], forms: FormOf, history: readonly number[]): Held[] {
  const counts = s.action.counts;
  if (!counts || !held.some((h) => h.leaf.unit === 'counted' && h.leaf.counts)) return [...held];
  const e = expressionOf(counts.expression, s.vocabulary);
  const facts: Record<string, number> = {};
  for (const name of factsOf(e)) {
    const f = forms(placed('part', 'now', name), true);
    facts[name] = f.terms.reduce((t, [v, c]) => t + c * (history[v] ?? 0), f.constant);
  }
  return held.map((h) => (!h.leaf.counts || h.left <= 0 ? h : { ...h, hours: hoursUntil(e, facts, s.mix, h.left) }));
}

/**
 * Hours until a counted figure has grown by so much, at a mix of flying.
 *
 * The figure need not grow steadily, nor for ever: the first time counts, though it may fall again. Where
 * the formula cannot be followed further (a divisor that may be zero there), or the place is only enclosed,
 * the hours up to which the limit is surely not reached are given: never too many.
 *
 * @returns null if the limit is not reached within ten million hours
 */
export function hoursUntil(e: Expression, facts: Facts, mix: Mix, left: number): number | null {
  const start = evaluate(e, facts);
  const rates = flownOn(Object.fromEntries(Object.keys(facts).map((name) => [name, 0])), mix, 1);
  const used = (h: number) => evaluate(e, flownOn(facts, mix, h)) - start;
  let free = 0;
  for (const span of SPANS_H) {
    try {
      const found = firstReach(e, facts, rates, start + left, 'at', span);
      if (found) return found.proven === 'exact' ? exactly(used, left, found.at) : Math.max(free, found.at);
    } catch (refusal) {
      if (refusal instanceof Refusal) return free;
      throw refusal;
    }
    free = span;
  }
  return null;
}

function exactly(used: (h: number) => number, left: number, at: number): number {
  let [low, high] = [Math.max(0, at - NEAR_H), at + NEAR_H];
  // A figure that only touches the limit and falls again has no such sides: the solver's place stands.
  if (used(low) >= left || used(high) < left) return at;
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    if (used(middle) < left) low = middle;
    else high = middle;
  }
  return Math.abs(high - rounded(high)) < 1e-9 ? rounded(high) : high;
}
