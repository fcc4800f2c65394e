import { evaluate, factsOf } from './expression/index.ts';
import { flownOn, landingsAhead } from './mix.ts';
import type { Mix } from './model.ts';
import type { Situation } from './situation.ts';
import { expressionOf } from './vocabulary.ts';

/** How much of a counted limit is "soon" at one mix. */
export function soonCounted(s: Situation, mix: Mix): number {
  const perHour = ratePerHour(s, mix);
  const soon_h =
    s.action.counts?.unit === 'landings'
      ? s.policy.soon_landings / Math.max(landingsAhead(mix), 0.01)
      : s.policy.soon_h;
  return soon_h * (perHour > 0 ? perHour : 1);
}

/** Flying in one use throughout, for each use whose hours the papers leave open: a lost paper never makes "soon" come later. */
export function openMixes(s: Situation): Mix[] {
  const facts = s.facts('now', 'part') ?? {};
  const open = Object.entries(facts).filter(
    ([name, f]) =>
      name.startsWith('hours.') &&
      name !== 'hours.total' &&
      f.terms.some(([v]) => s.region.variables[v]!.low < s.region.variables[v]!.high),
  );
  return open.map(([name]) => {
    const use = name.slice('hours.'.length);
    return {
      hours: { [use]: 1 },
      landingsPerHour: { [use]: s.mix.landingsPerHour[use] ?? landingsAhead(s.mix) },
      from: 'stated',
    };
  });
}

/** What the counted figure gains per hour of the carrier at the stated mix, over the next hours of the worst known history. */
export function ratePerHour(s: Situation, mix: Mix): number {
  const counts = s.action.counts;
  if (!counts) return 0;
  const e = expressionOf(counts.expression, s.vocabulary);
  const forms = s.facts('now', 'part') ?? {};
  const facts: Record<string, number> = {};
  for (const name of factsOf(e)) {
    const f = forms[name];
    facts[name] = f
      ? f.constant +
        f.terms.reduce((t, [v, c]) => t + c * (c > 0 ? s.region.variables[v]!.high : s.region.variables[v]!.low), 0)
      : 0;
  }
  const step = s.policy.soon_h;
  return Math.max(0, (evaluate(e, flownOn(facts, mix, step)) - evaluate(e, facts)) / step);
}
