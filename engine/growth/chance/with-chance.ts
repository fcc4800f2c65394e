import type { Provenance } from '../../foundation/provenance.ts';
import { type Step, type Worked, worked } from '../../foundation/working.ts';
import type { GrowthDocument } from '../document.ts';
import type { ChanceAnswer, GrowthAnswer } from '../model.ts';
import { LOG_ODDS_FROM } from './detection.ts';

/** An answer with what scatter makes of it: its sources, its working and its warnings beside the others. */
export function withChance(
  answer: Worked<GrowthAnswer>,
  document: GrowthDocument,
  chance: ChanceAnswer,
): Worked<GrowthAnswer> {
  const { value, working, warnings } = answer;
  const asked = document.chance!;
  const sources = [
    { what: 'scatter of growth per cycle', from: asked.growth_rate.from },
    { what: 'scatter of stress', from: asked.stress.from },
    { what: 'scatter of toughness', from: asked.toughness.from },
    ...(asked.detection
      ? [
          { what: 'sizes that are found', from: asked.detection.from },
          { what: 'chance of detection', from: LOG_ODDS_FROM },
        ]
      : []),
  ];
  return worked(
    { ...value, chance, sources: [...value.sources, ...sources] },
    [...working, ...stepsOf(document, chance)],
    [...warnings, ...warningsOf(document, chance)],
  );
}

function stepsOf(document: GrowthDocument, chance: ChanceAnswer): Step[] {
  const { growth_rate, stress, toughness, detection } = document.chance!;
  const spread = (symbol: string, meaning: string, { sd_ln, from }: { sd_ln: number; from: Provenance }): Step => ({
    symbol,
    meaning,
    formula:
      'standard deviation of the natural logarithm; factor = exp(s z), z normal, so that the stated value is the median',
    value: sd_ln,
    unit: '',
    provenance: from,
  });
  return [
    spread('s_rate', 'scatter of growth per cycle', growth_rate),
    spread('s_stress', 'scatter of every stress, limit load too', stress),
    spread('s_Kc', 'scatter of toughness', toughness),
    {
      symbol: 'n',
      meaning: `lives, drawn from seed ${chance.seed}`,
      formula: 'each grown from the first flaw to its own critical size with its own factors',
      value: chance.lives,
      unit: 'count',
    },
    ...chance.percentiles.map(
      ({ share, hours }): Step => ({
        symbol: `h_${Math.round(share * 100)}`,
        meaning: `hours by which ${Math.round(share * 100)} of 100 lives have ended`,
        formula: 'order statistic of the lives; its sampling lies between two order statistics by the binomial law',
        value: hours,
        unit: 'h',
      }),
    ),
    ...(detection && chance.passed[0]
      ? [
          {
            symbol: 'p_1',
            meaning: 'chance that a crack is critical before the first look',
            formula:
              'mean of the weights of the lives: 0 while it lasts, else 1 − most (1 − Π of the chances that each look before its end misses it)',
            value: chance.passed[0].chance,
            unit: '',
            provenance: LOG_ODDS_FROM,
          } satisfies Step,
        ]
      : []),
  ];
}

function warningsOf(document: GrowthDocument, chance: ChanceAnswer): string[] {
  return [
    'The chances hold for these three scatters alone, each on its own. They say nothing of a wrong first flaw, a wrong load or corrosion.',
    ...(document.interaction.as === 'none'
      ? []
      : ['The lives with scatter are counted without the slowing by overloads: it never shortens a life.']),
    ...(chance.unfinished > 0
      ? [
          `${chance.unfinished} of ${chance.lives} lives do not end by this law. They count as the longest; a rare high load may let them go on.`,
        ]
      : []),
  ];
}
