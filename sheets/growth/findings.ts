import type { growth } from '../../engine/index.ts';
import { number } from '../display.ts';
import type { FindingsBlock } from '../model.ts';
import { percent } from './words.ts';

type Finding = FindingsBlock['findings'][number];

/** What a reader of the page must know beside its figures. */
export function growthFindings(a: growth.GrowthAnswer): FindingsBlock[] {
  const findings: Finding[] = [];
  const add = (code: string, text: string, remedy: string) => findings.push({ code, text, entries: [], remedy });
  if (a.gives === 'ratios')
    add(
      'growth.no-stress',
      'No stress with a source is at hand for this place: uses are compared, and no times are given.',
      'Bring the stress per g and the stress at limit load from the type’s data, with their source.',
    );
  else {
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
  }
  return findings.length ? [{ block: 'findings', title: 'Findings', findings, empty: '' }] : [];
}
