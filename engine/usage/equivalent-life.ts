import { type Bounds, hull, scaleBounds } from '../foundation/bounds.ts';
import type { Day } from '../foundation/day.ts';
import { addForms, constantForm, type LinearForm } from '../foundation/region/index.ts';
import type { Worked } from '../foundation/working.ts';
import type { Facts, Life } from '../record/index.ts';
import { extremesOf, type RatioTable, ratioFor, weighted, wholeTables } from './equivalent.ts';
import type { EquivalentLife, UsageAnswer } from './model.ts';
import { hourSteps } from './working.ts';

const usesOf = (life: Life): string[] =>
  life.factNames.filter((n) => n.startsWith('hours.') && n !== 'hours.total').map((n) => n.slice('hours.'.length));
const hoursOf = (facts: Facts, use: string): LinearForm => facts[`hours.${use}`] ?? constantForm(0);
const namesOf = (lives: readonly Life[]): string[] => [...new Set(lives.flatMap(usesOf))];
const over = (lives: readonly Life[], of: (life: Life) => Bounds): Bounds => lives.map(of).reduce(hull);

const flownBy = (lives: readonly Life[], uses: readonly string[], day: Day): Bounds =>
  over(lives, (l) => extremesOf(addForms(...uses.map((u) => hoursOf(l.at(day), u))), l.region));
const countedBy = (lives: readonly Life[], uses: readonly string[], ratios: readonly number[], day: Day): Bounds =>
  over(lives, (l) => {
    const forms = uses.map((u) => hoursOf(l.at(day), u));
    return extremesOf(weighted(forms, ratios), l.region);
  });

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
  const uses = namesOf(lives);
  const factors = uses.map((use) => ratioFor(answer.uses, use));
  const ratios = factors.map((f) => f.ratio);
  const points = days.map((day) => ({
    day,
    flown_h: flownBy(lives, uses, day),
    equivalent_h: countedBy(lives, uses, ratios, day),
  }));
  const last = days.at(-1) ?? life.until;
  const byUse = uses.flatMap((use, i) => {
    const flown_h = over(lives, (l) => extremesOf(hoursOf(l.at(last), use), l.region));
    return flown_h.high > 0 ? [{ use, flown_h, ...factors[i]! }] : [];
  });
  byUse.sort((a, b) => Number(a.assumed) - Number(b.assumed) || b.flown_h.high - a.flown_h.high);
  return { part: life.subject.id, points, byUse };
}

/**
 * The answer of one part, its hours settled by its life instead of by bounds use by use.
 *
 * Bounds use by use forget what excludes what: hours that no paper names may be of any use, but once, and of papers
 * that contradict each other one is true. Over the possible histories of the life that is kept, so that the sums are
 * never wider than by the bounds.
 *
 * Not valid for a life of which the day is no cut: the cut before counts.
 *
 * @param answer to a document that states hours; one without is handed back
 * @param life the life that those hours are of
 * @param others the same life under other readings of contradicting papers; the bounds take in all of them
 * @returns the answer with hours flown, equivalent hours and share of the safe life anew, and their steps
 * @throws Refusal `region.impossible`, `region.unsolved`
 */
export function answerOfLife(
  answer: Worked<UsageAnswer>,
  life: Life,
  day: Day,
  others: readonly Life[] = [],
): Worked<UsageAnswer> {
  const a = answer.value;
  if (!a.equivalent) return answer;
  const lives = [life, ...others];
  const uses = namesOf(lives);
  const under = (table: RatioTable) =>
    countedBy(
      lives,
      uses,
      uses.map((use) => ratioFor(table, use).ratio),
      day,
    );
  const equivalent_h = under(a.uses);
  const safe = a.uses.find((u) => u.use === a.reference)?.safeLife_h ?? null;
  const value = {
    ...a,
    equivalent: {
      ...a.equivalent,
      flown_h: flownBy(lives, uses, day),
      equivalent_h,
      across_h: wholeTables(a.sensitivity).map(under).reduce(hull, equivalent_h),
      used: safe === null ? null : scaleBounds(equivalent_h, 1 / safe),
    },
  };
  const before = answer.working.slice(0, answer.working.length - hourSteps(a).length);
  return { ...answer, value, working: [...before, ...hourSteps(value)] };
}
