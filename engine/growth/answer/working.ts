import type { Step } from '../../foundation/working.ts';
import type { GrowthDocument } from '../document.ts';
import type { GrowthAnswer } from '../model.ts';
import { three } from './figures.ts';
import type { Problem } from './problem.ts';
import type { Made } from './warnings.ts';
import { ofLoading, ofMaterial, ofPlace } from './working-inputs.ts';
import { ofCritical, ofCurve, ofInteraction } from './working-lives.ts';

/** The steps from the place to the looks. */
export function workingOf(d: GrowthDocument, made: Made): Step[] {
  const { problem, value, curves, flown } = made;
  if (!curves) return [];
  return [
    ...ofPlace(d, problem),
    ...ofMaterial(problem),
    ...ofLoading(problem, made.sequence),
    ...ofCritical(d, problem, value),
    ...ofCurve('first flaw', 'H1', curves.first, value.firstToCritical_h),
    ...ofCurve('what a look can find', 'H2', curves.detectable, value.detectableToCritical_h),
    ...ofInteraction(made.beside, value.interaction.as),
    ...ofUses(value),
    ...ofProgramme(value, flown),
  ];
}

const ofUses = ({ byUse, reference }: GrowthAnswer): Step[] =>
  byUse.map((u) => ({
    symbol: 'r',
    meaning: `growth in an hour of ${u.use}, in hours of ${reference}`,
    formula: 'Σ N (Z σmax)^n of one over that of the other',
    value: u.ratio,
    unit: '',
  }));

function ofProgramme({ programme, rule, left_h }: GrowthAnswer, flown: Made['flown']): Step[] {
  if (!programme) return [];
  const { computed, capped } = programme;
  const cap = (by: string | null) => (by === null ? 'nothing in force is shorter' : `capped by ${by}, in force`);
  return [
    {
      symbol: 'T1',
      meaning: 'first look by the rule',
      formula: `${three(rule.first)} H1`,
      value: computed.first_h,
      unit: 'h',
      provenance: rule.from,
    },
    {
      symbol: 'T2',
      meaning: 'repeat by the rule',
      formula: `${three(rule.repeat)} H2`,
      value: computed.repeat_h,
      unit: 'h',
      provenance: rule.from,
    },
    { symbol: 'T1*', meaning: 'first look', formula: cap(capped.first), value: programme.first_h, unit: 'h' },
    { symbol: 'T2*', meaning: 'repeat', formula: cap(capped.repeat), value: programme.repeat_h, unit: 'h' },
    ...(flown
      ? [
          {
            symbol: 'Hf',
            meaning: 'hours flown, as hours of the mix to come',
            formula: 'Σ h r / r of the mix',
            value: flown,
            unit: 'h' as const,
          },
        ]
      : []),
    ...(left_h
      ? [
          {
            symbol: 'left',
            meaning: 'left to the first look, the worse side first',
            formula: 'T1 − Hf, never more than a directive leaves',
            value: left_h,
            unit: 'h' as const,
          },
        ]
      : []),
  ];
}

/** The steps of ratios: no hour among them. */
export const workingOfRatios = (p: Problem, value: GrowthAnswer): Step[] => [...ofMaterial(p), ...ofUses(value)];
