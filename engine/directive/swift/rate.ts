import { evaluate } from '../expression/index.ts';
import { flownOn, landingsAhead } from '../mix.ts';
import type { Mix } from '../model.ts';
import type { SwiftAction } from './compile.ts';
import { factsOn, type SwiftLife } from './life.ts';
import type { Term } from './linear.ts';

/** What the counted figure gains per hour of the carrier at a mix of flying. */
export function rateOf(a: SwiftAction, life: SwiftLife, mix: Mix): number {
  const { expression, facts, linear, terms } = a.counting!;
  if (linear) {
    let rate = 0;
    for (const t of terms) rate += t.weight * gainOf(t, mix);
    return rate;
  }
  const now = factsOn(life, facts, life.asked.day);
  const step = life.asked.policy.soon_h;
  return (evaluate(expression, flownOn(now, mix, step)) - evaluate(expression, now)) / step;
}

function gainOf({ what, use, unit }: Term, mix: Mix): number {
  if (what === 'hours') return use === 'total' ? 1 : (mix.hours[use] ?? 0);
  if (what === 'landings')
    return use === 'total' ? landingsAhead(mix) : (mix.hours[use] ?? 0) * (mix.landingsPerHour[use] ?? 1);
  if (what !== 'since' && what !== 'kit') return 0;
  return unit === 'hours' ? 1 : landingsAhead(mix);
}

/** How much of a counted limit is "soon" at one mix. */
function soonCounted(a: SwiftAction, life: SwiftLife, mix: Mix): number {
  const perHour = rateOf(a, life, mix);
  const { policy } = life.asked;
  const soon_h =
    a.action.counts?.unit === 'landings' ? policy.soon_landings / Math.max(landingsAhead(mix), 0.01) : policy.soon_h;
  return soon_h * (perHour > 0 ? perHour : 1);
}

/** The yardstick of a counted limit, and the steepest that the open uses allow. */
export function soonOf(a: SwiftAction, life: SwiftLife): { scale: number; steep: number } {
  const own = soonCounted(a, life, life.mix);
  if (!life.open) return { scale: 1 / own, steep: 1 / own };
  let most = own;
  for (const use of life.sums.uses) {
    const landingsPerHour = { [use]: life.mix.landingsPerHour[use] ?? life.landingsAhead };
    most = Math.max(most, soonCounted(a, life, { hours: { [use]: 1 }, landingsPerHour, from: 'stated' }));
  }
  return { scale: 1 / own, steep: 1 / most };
}
