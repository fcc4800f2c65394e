import type { Step } from '../../foundation/working.ts';
import type { GrowthDocument } from '../document.ts';
import type { GrowthAnswer, GrowthCurve } from '../model.ts';
import type { Beside } from './beside.ts';
import { METHOD, pointWords, sizeWords } from './figures.ts';
import type { Problem } from './problem.ts';

export function ofCritical(d: GrowthDocument, p: Problem, { critical }: GrowthAnswer): Step[] {
  return [
    {
      symbol: 'σL',
      meaning: 'remote stress that must be carried',
      formula: 'stress at limit load, or what the loading reaches as often if that is more',
      value: p.limit_MPa,
      unit: 'MPa',
      ...(d.limit_stress ? { provenance: d.limit_stress.from } : {}),
    },
    ...(critical
      ? [
          {
            symbol: 'ccrit',
            meaning: `critical size, by ${critical.by}`,
            formula: 'least of Kc / (K/σ) with the yielded zone, and σys Anet/A, is σL',
            value: sizeWords(critical.size),
            unit: '' as const,
            source: `${METHOD}, Residual strength`,
          },
        ]
      : []),
  ];
}

export function ofCurve(from: string, symbol: string, curve: GrowthCurve, hours: number | null): Step[] {
  const { through } = curve;
  const after = through && curve.points.find((p) => p.a_mm === null);
  return [
    ...(through
      ? [
          {
            symbol: `${symbol}t`,
            meaning: `from ${from} until it comes through, ${pointWords(through)}`,
            formula: 'a reaches the thickness',
            value: through.hours,
            unit: 'h' as const,
          },
          {
            symbol: 'K before',
            meaning: 'at the surface under the highest stress, as it comes through',
            formula: 'part-through crack',
            value: through.kc_MPa_sqrt_m,
            unit: 'MPa√m' as const,
          },
          ...(after
            ? [
                {
                  symbol: 'K after',
                  meaning: 'the same, as the through crack of the same length',
                  formula: 'through crack',
                  value: after.kc_MPa_sqrt_m,
                  unit: 'MPa√m' as const,
                },
              ]
            : []),
        ]
      : []),
    {
      symbol,
      meaning: `from ${from} to ${curve.ended === 'no growth' ? 'nowhere: no growth' : pointWords(curve.points.at(-1)!)}`,
      formula: curve.by === 'blocks' ? '∫ over the sum of the weights of the cycles' : '∫ dc / (dc/dh), and da with it',
      value: hours ?? 'no growth computed',
      unit: hours === null ? '' : 'h',
      source: `${METHOD}, Integration: ${curve.by}, ${curve.evaluations} evaluations of K`,
    },
    ...(hours === null
      ? []
      : [
          {
            symbol: `ε${symbol}`,
            meaning: 'bound of the error of these hours, as a share',
            formula: 'errors of the steps, summed',
            value: curve.errorBound,
            unit: '' as const,
          },
        ]),
  ];
}

export function ofInteraction(beside: Beside | null, as: string): Step[] {
  if (!beside) return [];
  const { withIt, without } = beside;
  return [
    ...(without
      ? [
          {
            symbol: 'H0',
            meaning: 'the cycles of the sequence from the first flaw, without interaction',
            formula: 'by blocks',
            value: without.hours,
            unit: 'h' as const,
          },
        ]
      : []),
    {
      symbol: 'Hi',
      meaning: `the same with ${as}${withIt.ended === 'asked cycles' ? ', count stopped before the end' : ''}; shown beside, no look rests on it`,
      formula: `cycle by cycle, ${withIt.cycles} cycles`,
      value: withIt.hours,
      unit: 'h',
      source: 'AE 737 (Smith, 2022), lecture 20',
    },
  ];
}
