import { type Bounds, hull } from '../foundation/bounds.ts';
import type { Day } from '../foundation/day.ts';
import { addForms, constantForm, type LinearForm } from '../foundation/region/index.ts';
import type { Facts, Life } from '../record/index.ts';
import { extremesOf, ratioFor, weighted } from './equivalent.ts';
import type { EquivalentLife, UsageAnswer } from './model.ts';

const usesOf = (life: Life): string[] =>
  life.factNames.filter((n) => n.startsWith('hours.') && n !== 'hours.total').map((n) => n.slice('hours.'.length));
const hoursOf = (facts: Facts, use: string): LinearForm => facts[`hours.${use}`] ?? constantForm(0);
const over = (lives: readonly Life[], of: (life: Life) => Bounds): Bounds => lives.map(of).reduce(hull);

/**
 * Equivalent hours of one part along its life.
 *
 * On each day the hours of every use are linear figures over the possible histories; weighted by their ratios they are
 * one such figure, and its least and greatest over all histories are exact together: hours that may be of this use or
 * of that are never counted as both. A use whose loads are not known counts as the hardest known one.
 *
 * Not valid between the days that the life was cut at: the cut before counts.
 *
 * @param life up to the last of the days, with the days as its cuts
 * @param answer whose ratios weigh the uses
 * @param others the same life under other readings of contradicting papers; the bounds take in all of them
 * @returns hours flown and equivalent hours, as bounds, on each day
 * @throws Refusal `region.impossible`, `region.unsolved`
 */
export function equivalentLife(
  life: Life,
  answer: Pick<UsageAnswer, 'uses'>,
  days: readonly Day[],
  others: readonly Life[] = [],
): EquivalentLife {
  const lives = [life, ...others];
  const uses = [...new Set(lives.flatMap(usesOf))];
  const factors = uses.map((use) => ratioFor(answer.uses, use));
  const ratios = factors.map((f) => f.ratio);
  const points = days.map((day) => ({
    day,
    flown_h: over(lives, (l) => extremesOf(addForms(...uses.map((u) => hoursOf(l.at(day), u))), l.region)),
    equivalent_h: over(lives, (l) =>
      extremesOf(
        weighted(
          uses.map((u) => hoursOf(l.at(day), u)),
          ratios,
        ),
        l.region,
      ),
    ),
  }));
  const last = days.at(-1) ?? life.until;
  const byUse = uses.flatMap((use, i) => {
    const flown_h = over(lives, (l) => extremesOf(hoursOf(l.at(last), use), l.region));
    return flown_h.high > 0 ? [{ use, flown_h, ...factors[i]! }] : [];
  });
  byUse.sort((a, b) => Number(a.assumed) - Number(b.assumed) || b.flown_h.high - a.flown_h.high);
  return { part: life.subject.id, points, byUse };
}
