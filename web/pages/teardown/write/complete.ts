import type { TeardownChoices } from '../../../api/teardown.ts';
import { listOf, type Table, tableOf, textOf } from '../../../parts/write/json.ts';
import { mapOf } from './choices.ts';

const WORK: Readonly<Record<string, string>> = { replace: 'replace', repair: 'repair', reach: 'reach' };
const MOST = 3;
const small = (name: string): string =>
  /^[A-Z][a-z]/.test(name) ? name.charAt(0).toLowerCase() + name.slice(1) : name;

/** Every part that a job aims at, those of a choice among them too. */
export const aims = (draft: Table): readonly Table[] =>
  listOf(draft.targets).flatMap((t) => {
    const any = tableOf(t).any;
    return any === undefined ? [tableOf(t)] : listOf(any).map(tableOf);
  });

/** A name for a job that has none: "ZQ-LMB, replace right inboard spar". */
export function nameFor(draft: Table, choices: TeardownChoices): string {
  const { parts } = mapOf(draft, choices);
  const said = aims(draft).flatMap((t) => {
    const part = parts.find((p) => p.id === t.part);
    const work = WORK[textOf(t.work)];
    return part && work ? [`${work} ${small(part.name)}`] : [];
  });
  if (said.length === 0) return '';
  const aircraft = choices.aircraft.find((a) => a.id === draft.aircraft)?.registration;
  const more = said.length > MOST ? ` and ${said.length - MOST} more` : '';
  return [...(aircraft ? [aircraft] : []), `${said.slice(0, MOST).join(', ')}${more}`].join(', ').slice(0, 200);
}
/** The side of the wing that all parts lie on; both where they do not agree. */
export function sideFor(draft: Table, choices: TeardownChoices): string {
  const { parts } = mapOf(draft, choices);
  const sides = new Set(aims(draft).flatMap((t) => parts.find((p) => p.id === t.part)?.side ?? []));
  return sides.size === 1 ? [...sides][0]! : sides.size === 0 ? '' : 'both';
}

/** A job with its name and its side, where the form left them to follow from the parts; without a part it is not kept. */
export function completeJob(draft: Table, choices: TeardownChoices): Table {
  const title = textOf(draft.title).trim() === '' ? nameFor(draft, choices) || 'Teardown' : draft.title!;
  const side = draft.side === undefined ? sideFor(draft, choices) || 'both' : draft.side;
  return { ...draft, title, side };
}
