import { Refusal } from '../../foundation/refusal.ts';
import type { GrowthDocument } from '../document.ts';
import type { HourlyCycle } from '../integrate/index.ts';
import type { GrowthAnswer } from '../model.ts';
import { hoursOf, lifeByHours, quickGrowth } from './lives.ts';
import { type Change, problemOf } from './problem.ts';

interface Trial {
  readonly input: string;
  readonly changed: string;
  readonly harsher: Change;
  readonly milder: Change;
  readonly from?: 'detectable';
}
const tenth = (input: string, of: keyof Change): Trial => ({
  input,
  changed: '±10 %',
  harsher: { [of]: 0.9 },
  milder: { [of]: 1.1 },
});
const TRIALS: readonly Trial[] = [
  { input: 'stress', changed: '±10 %, at limit load too', harsher: { stress: 1.1 }, milder: { stress: 0.9 } },
  { input: 'growth per cycle', changed: 'times and over 1.5', harsher: { rate: 1.5 }, milder: { rate: 1 / 1.5 } },
  { input: 'first flaw', changed: 'times and over 1.5', harsher: { first: 1.5 }, milder: { first: 1 / 1.5 } },
  {
    input: 'what a look can find',
    changed: 'times and over 1.5',
    harsher: { detectable: 1.5 },
    milder: { detectable: 1 / 1.5 },
    from: 'detectable',
  },
  { input: 'toughness', changed: '±20 %', harsher: { toughness: 0.8 }, milder: { toughness: 1.2 } },
  tenth('yield stress', 'yield'),
  tenth('width', 'width'),
  tenth('thickness', 'thickness'),
  tenth('hole diameter', 'diameter'),
];

/**
 * What the hours to critical become when one input changes, widest first; the loading as cycles an hour. A change that
 * the solution does not reach, or under which nothing grows, is left out and its side said.
 */
export function sensitivityOf(d: GrowthDocument, cycles: readonly HourlyCycle[]): GrowthAnswer['sensitivity'] {
  const growth = quickGrowth(problemOf(d, cycles));
  const hours = (change: Change, from: Trial['from']): number | null => {
    try {
      const p = problemOf(d, cycles, change);
      const { stress = 1, rate = 1 } = change;
      const changed = (k: number) => rate * growth(stress * k);
      return hoursOf(lifeByHours(p, changed)(from ? p.detectable : p.first, 0));
    } catch (e) {
      if (e instanceof Refusal) return null;
      throw e;
    }
  };
  return TRIALS.flatMap((trial) => {
    if (trial.input === 'hole diameter' && !('diameter_mm' in d.geometry)) return [];
    const [base, worse, better] = [{}, trial.harsher, trial.milder].map((change) => hours(change, trial.from));
    if (base === null || base === undefined || (worse === null && better === null)) return [];
    const all = [base, worse, better].filter((h) => typeof h === 'number');
    const side = worse === null || better === null ? '; one side cannot be told' : '';
    return [
      {
        input: trial.input,
        changed: trial.changed + side,
        hoursFrom: trial.from ?? ('first flaw' as const),
        low_h: Math.min(...all),
        high_h: Math.max(...all),
      },
    ];
  }).sort((a, b) => b.high_h - b.low_h - (a.high_h - a.low_h));
}
