import type { growth } from '../../engine/index.ts';
import { capital, number } from '../display.ts';
import { measured, type Units } from '../measure.ts';
import type { FindingsBlock } from '../model.ts';
import { INTERACTIONS, percent } from './words.ts';

type Finding = FindingsBlock['findings'][number];

/** What a reader of the page must know beside its figures. */
export function growthFindings(a: growth.GrowthAnswer, units: Units): FindingsBlock {
  const findings: Finding[] = [];
  const add = (code: string, text: string, remedy: string) => findings.push({ code, text, entries: [], remedy });
  if (a.gives === 'ratios')
    add(
      'growth.no-stress',
      'No stress with a source is at hand for this place: uses are compared, and no times are given.',
      'Bring the stress per g and the stress at limit load from the type’s data, with their source.',
    );
  else {
    const { critical, detectable, first } = a;
    if (critical && detectable.c_mm >= critical.size.c_mm)
      add(
        'growth.found-too-late',
        `A look can find ${measured(detectable.c_mm, 'length', units)}, and ${measured(critical.size.c_mm, 'length', units)} is critical: no repeat can rest on it.`,
        'Choose a method that finds smaller cracks.',
      );
    if (detectable.c_mm < first.c_mm)
      add(
        'growth.finds-less-than-first',
        `A look can find ${measured(detectable.c_mm, 'length', units)}, less than the first flaw of ${measured(first.c_mm, 'length', units)}: repeats come out longer than the first look would.`,
        'Take the size that is found in this hole by these hands, not in a laboratory.',
      );
    if (a.curve?.ended === 'no growth')
      add(
        'growth.does-not-grow',
        'By this law the first flaw does not grow under these loads. A longer one, or a rare high load, may still grow.',
        'Try a longer first flaw, and a law without threshold.',
      );
    if (a.interaction.as !== 'none')
      add(
        'growth.interaction-beside',
        `${capital(INTERACTIONS[a.interaction.as])} would let a high load slow the growth after it. The looks rest on the life without it, which is the shorter.`,
        'Nothing is to be done.',
      );
    if (a.curve && a.curve.errorBound > 0.01)
      add(
        'growth.not-exact',
        `The hours are told to ${number(100 * a.curve.errorBound, 1)} %, no better.`,
        'Take the shorter end.',
      );
    const early = a.chance?.passed.find((p) => p.chance > 0);
    if (a.chance && early)
      add(
        'growth.chance-of-passing',
        `In ${percent(early.chance)} of the lives drawn the crack is critical before look ${early.look}, at ${number(early.hours)} h, and was not found.`,
        'Look earlier, or with a better method.',
      );
    if (a.chance && a.chance.unfinished > 0)
      add(
        'growth.unfinished',
        `${number(a.chance.unfinished)} of ${number(a.chance.lives)} lives were stopped before their end and count as long ones.`,
        'Nothing is to be done: what is told of the short lives stays as it is.',
      );
  }
  return { block: 'findings', title: 'Findings', findings, empty: 'Nothing more to say beside the figures.' };
}
