import type { Step } from '../foundation/working.ts';
import { factsOf } from './expression/index.ts';
import type { Judged } from './judge.ts';
import type { Setting } from './life-situation.ts';
import type { Situation } from './situation.ts';
import { expressionOf, vocabularyOf } from './vocabulary.ts';

const sourceOf = (at: Setting) => ({
  source: `${at.directive.number}, issue ${at.directive.issue}${at.action.source ? `, ${at.action.source}` : ''} (${at.directive.reference})`,
  provenance: {
    source: at.directive.reference,
    known: at.directive.known,
    ...(at.action.source ? { place: at.action.source } : {}),
  },
});

/** Every step from the logbook to the limit. */
export const workingOf = {
  ended: (ended: { because: string; entry: string | null }, at: Setting): Step => ({
    symbol: 'ended',
    meaning: 'What ended it for this part',
    formula: '',
    value: ended.because,
    unit: '',
    ...sourceOf(at),
    ...(ended.entry ? { entries: [ended.entry] } : {}),
  }),
  limits(at: Setting, s: Situation, j: Judged): Step[] {
    const steps: Step[] = [];
    const counts = at.action.counts;
    const names = counts ? factsOf(expressionOf(counts.expression, vocabularyOf(at.directive.cases))) : [];
    for (const name of names)
      if (at.life.factNames.includes(name)) steps.push(...at.life.figure(name, at.day).working.slice(-1));
    if (counts && j.counted)
      steps.push({
        symbol: 'C',
        meaning: counts.called,
        formula: counts.expression,
        value: j.counted.low === j.counted.high ? j.counted.low : j.counted,
        unit: 'counted',
        ...sourceOf(at),
      });
    if (s.done)
      steps.push({
        symbol: 'D',
        meaning: 'Last done',
        formula: '',
        value: s.done.day,
        unit: '',
        entries: [s.done.entry],
      });
    for (const h of j.held.worst) {
      const best = j.held.best.find((b) => b.leaf.words === h.leaf.words);
      const [a, b] = [h.left, best?.left ?? h.left];
      steps.push({
        symbol: 'L',
        meaning: `Left to ${h.leaf.words}`,
        formula: h.leaf.is === 'at' ? 'limit - figure; due at 0' : 'limit - figure; overdue below 0',
        value: a === b ? a : { low: Math.min(a, b), high: Math.max(a, b) },
        unit: h.leaf.unit,
        ...sourceOf(at),
        ...(h.leaf.entry ? { entries: [h.leaf.entry] } : {}),
      });
    }
    steps.push({
      symbol: 'mix',
      meaning: 'Flying ahead, from which readings are projected',
      formula: Object.entries(s.mix.hours)
        .map(
          ([u, share]) =>
            `${Math.round(share * 100)} % ${u}, ${Math.round((s.mix.landingsPerHour[u] ?? 1) * 100) / 100} landings an hour`,
        )
        .join('; '),
      value: s.mix.from,
      unit: '',
    });
    return steps;
  },
};
