import type { usage } from '../../engine/index.ts';
import { timesFigure } from '../measure.ts';
import type { FindingsBlock } from '../model.ts';
import { nothingHarms } from './answer.ts';
import { saidUse } from './words.ts';

type Finding = FindingsBlock['findings'][number];
/** A sequence that harms the place by a tenth more than the table it was drawn from is worth a word. */
const MORE = 1.1;

/** What a reader of the page must know beside its figures. */
export function usageFindings(a: usage.UsageAnswer): FindingsBlock[] {
  const findings: Finding[] = [];
  const add = (code: string, text: string, remedy: string) => findings.push({ code, text, entries: [], remedy });
  if (a.gives === 'ratios')
    add(
      'usage.no-stress',
      'No stress per g with a source is at hand for this place: uses are compared, lives are not given.',
      'Bring the stress per g from the type’s data, with its source.',
    );
  if (nothingHarms(a))
    add(
      'usage.nothing-harms',
      `Every cycle stays below the run-out of ${a.curve.name}. Tests end near ten to a hundred million cycles, and small cycles count once there is a crack.`,
      'Try a sharper notch, or ask the growth page.',
    );
  else if (a.gives === 'lives' && a.uses.every((u) => !((u.perHour ?? 0) > 0 || (u.sequencePerHour ?? 0) > 0)))
    add(
      'usage.under-run-out',
      `Every cycle stays below the run-out of ${a.curve.name}: no life can be told. The uses are compared by powers of the stress alone.`,
      'Small cycles count once there is a crack: ask the growth page.',
    );
  const harder = a.uses.filter(
    (u) => u.sequencePerHour !== null && u.perHour !== null && u.perHour > 0 && u.sequencePerHour > MORE * u.perHour,
  );
  if (harder.length)
    add(
      'usage.sequence-harder',
      `Counted flight by flight there is more harm than in the tables taken one by one: ${harder.map((u) => `${saidUse(a, u.use)} ${timesFigure(u.sequencePerHour! / u.perHour!)} times`).join(', ')}.`,
      'Lives and comparisons rest on the harsher of the two; both stand below.',
    );
  return findings.length ? [{ block: 'findings', title: 'Findings', findings, empty: '' }] : [];
}
