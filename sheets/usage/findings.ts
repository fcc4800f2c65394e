import type { usage } from '../../engine/index.ts';
import { capital, number } from '../display.ts';
import type { FindingsBlock } from '../model.ts';
import { nothingTires } from './answer.ts';
import { saidUse } from './words.ts';

type Finding = FindingsBlock['findings'][number];
/** A sequence that tires the place by a tenth more than the table it was drawn from is worth a word. */
const MORE = 1.1;

/** What a reader of the page must know beside its figures. */
export function usageFindings(a: usage.UsageAnswer): FindingsBlock {
  const hardest = saidUse(a, a.hardest);
  const findings: Finding[] = [];
  const add = (code: string, text: string, remedy: string) => findings.push({ code, text, entries: [], remedy });
  if (a.gives === 'ratios')
    add(
      'usage.no-stress',
      'No stress per g with a source is at hand for this place: uses are compared, lives are not given.',
      'Bring the stress per g from the type’s data, with its source.',
    );
  for (const u of a.equivalent?.byUse.filter((x) => x.assumed) ?? [])
    add(
      'usage.no-loads',
      `No loads are given for ${saidUse(a, u.use)}: its hours count as ${hardest}, the hardest use described.`,
      'Give its loads with their source, or correct the use in the record.',
    );
  if (nothingTires(a))
    add(
      'usage.nothing-tires',
      `Every cycle stays below the run-out of ${a.curve.name}. Tests end near ten to a hundred million cycles, and small cycles count once there is a crack.`,
      'Try a sharper notch, or ask the growth page.',
    );
  for (const u of a.uses)
    if (u.sequencePerHour !== null && u.perHour !== null && u.perHour > 0 && u.sequencePerHour > MORE * u.perHour)
      add(
        'usage.sequence-harder',
        `${capital(saidUse(a, u.use))}, counted flight by flight, does ${number(u.sequencePerHour / u.perHour, 1)} times the harm of its tables taken one by one.`,
        'Draw more flights, and take the worse of the two.',
      );
  return { block: 'findings', title: 'Findings', findings, empty: 'Nothing more to say beside the figures.' };
}
