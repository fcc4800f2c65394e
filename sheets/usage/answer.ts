import { type usage, widthOf } from '../../engine/index.ts';
import { capital, number, range } from '../display.ts';
import { f, t } from '../frame.ts';
import { timesFigure, timesRange } from '../measure.ts';
import type { Span } from '../model.ts';
import { LOAD_WORDS, saidUse } from './words.ts';

type Answer = usage.UsageAnswer;
export const nothingHarms = (a: Answer): boolean => a.uses.every((u) => u.shares.every((s) => s.share <= 0));
const hardestOf = (a: Answer) => a.uses.find((u) => u.use === a.hardest) ?? a.uses[0]!;

/** One sentence for the telephone: what the hours count as, or how much harder the hardest use is. */
export function usageSentence(a: Answer): Span[] {
  const reference = saidUse(a, a.reference);
  if (nothingHarms(a))
    return [
      t('By this curve nothing in these tables harms the place: '),
      f('that is no proof that it lasts for ever'),
      t('.'),
    ];
  if (a.gives === 'lives' && a.equivalent)
    return [...countsAs(a, reference), ...safeLifePassed(a, reference), ...harder(a, reference, ' ')];
  if (a.uses.length === 1) return onlyOne(a, reference);
  return harder(a, reference, '');
}
/** Without another use there is no ratio: what is left to say is the life. */
function onlyOne(a: Answer, reference: string): Span[] {
  const safe_h = a.gives === 'lives' ? a.uses[0]!.safeLife_h : null;
  if (safe_h === null) return [t(`Only ${reference} is described: there is no other use to hold it against.`)];
  return [
    t(`By this estimate the safe life of this place in ${reference} is `),
    f(`${number(Math.floor(safe_h))}\u00a0h`),
    t(', and it approves nothing. No other use is described to hold it against.'),
  ];
}
function countsAs(a: Answer, reference: string): Span[] {
  const { flown_h, equivalent_h } = a.equivalent!;
  const treat = number(equivalent_h.high);
  const flown = range(flown_h);
  if (equivalent_h.high < flown_h.high)
    return [
      t(`The ${flown}\u00a0h flown do the harm of `),
      f(`up to ${treat}\u00a0h of ${reference}`),
      t(`; for every limit they stay ${flown}\u00a0h.`),
    ];
  return [
    t(`Treat the ${flown}\u00a0h flown as `),
    f(`${treat}\u00a0h of ${reference}`),
    ...(number(equivalent_h.low) === treat || range(equivalent_h) === flown
      ? []
      : [t(` (${range(equivalent_h)}\u00a0h, as the papers leave it)`)]),
    t('.'),
  ];
}
/** The share of the safe life used up by the estimate, where its harder bound is past the whole. */
export const passedShare = (a: Answer) => {
  const used = a.gives === 'lives' ? a.equivalent?.used : null;
  return used && used.high >= 1 ? used : null;
};
function safeLifePassed(a: Answer, reference: string): Span[] {
  const used = passedShare(a);
  if (!used) return [];
  const safe_h = a.uses.find((u) => u.use === a.reference)?.safeLife_h ?? a.equivalent!.equivalent_h.high / used.high;
  return [
    t(' By this estimate the part has flown '),
    f(`past its safe life of ${number(Math.floor(safe_h))}\u00a0h`),
    t(` of ${reference}${used.low >= 1 ? '' : ' at its harder bound'}; ask the engineer before more is flown on it.`),
  ];
}
function harder(a: Answer, reference: string, before: string): Span[] {
  const hardest = hardestOf(a);
  if (a.uses.length === 1) return [];
  if (hardest.use !== a.reference)
    return [
      t(`${before}An hour of ${saidUse(a, hardest.use)} works this place `),
      f(`${timesFigure(hardest.ratio)} times`),
      t(` as hard as an hour of ${reference}.`),
    ];
  const next = [...a.uses].filter((u) => u.use !== a.reference).sort((x, y) => y.ratio - x.ratio)[0]!;
  return [
    t(
      `${before}No use described works this place harder than ${reference}; an hour of ${saidUse(a, next.use)} counts `,
    ),
    f(`${timesFigure(next.ratio)} times`),
    t('.'),
  ];
}

/** One line of why: which load does most of it, and how far the answer moves with what was tried. */
export function usageBecause(a: Answer): string {
  if (nothingHarms(a)) return `${a.curve.name} sees no harm below its run-out, and the tables stay below it.`;
  const hardest = hardestOf(a);
  const first = [...hardest.shares].sort((x, y) => y.share - x.share)[0];
  const used = passedShare(a);
  const parts = [
    ...(used
      ? [
          `The hours come to ${timesRange(used)} times the safe life; an estimate grounds nothing and frees nothing, and the type’s papers say what is asked at this place.`,
        ]
      : []),
    ...(first && first.share > 0
      ? [
          `In ${saidUse(a, hardest.use)} most of it comes from ${LOAD_WORDS[first.load]} (${number(100 * first.share)} %).`,
        ]
      : []),
    ...(hardest.use !== a.reference && hardest.ratioAcross.high > hardest.ratioAcross.low
      ? [`Over all that was tried it is ${timesRange(hardest.ratioAcross)} times.`]
      : []),
    ...(a.gives === 'lives' && a.equivalent?.across_h && widthOf(a.equivalent.across_h) > 0.5
      ? [`All hours together then count as ${range(a.equivalent.across_h)} h.`]
      : []),
    ...(a.gives === 'ratios'
      ? ['No stress per g with a source is at hand: uses are compared, and no life is given.']
      : []),
  ];
  return capital(parts.join(' ')) || 'One use is described.';
}
