import type { TeardownDocument } from '../document.ts';
import { type Graph, indexOf, splitStep, stepTitle } from '../map/index.ts';
import { inText } from '../words.ts';
import type { Chosen } from './chosen.ts';

const WORK = { replace: 'is to be replaced', repair: 'is to be repaired', reach: 'is to be reached' } as const;

/** Of each chosen step why it is on the plan: what needs it, in words. */
export function becauseOf(document: TeardownDocument, graph: Graph, chosen: Chosen): Record<string, string> {
  const users = usersOf(graph, chosen);
  const said: Record<string, string> = {};
  for (const i of chosen.order) {
    if (i >= graph.count) continue;
    const step = graph.steps[i]!;
    const words = [...(users.get(i) ?? [])].map((u) => sayUser(document, graph.steps[u]!)).filter((w) => w !== '');
    const asked = askedOf(document, step);
    said[step] = join([...asked, ...new Set(words)]);
  }
  return said;
}

/** Steps, targets, looks and jobs that rest on each step, through what was made up between. */
function usersOf(graph: Graph, chosen: Chosen): Map<number, Set<number>> {
  const users = new Map<number, Set<number>>();
  const isMadeUp = (i: number) => /^(way|any):/.test(graph.steps[i]!);
  const add = (to: number, user: number) => {
    if (isMadeUp(to)) for (const deeper of chosen.rests.get(to) ?? []) add(deeper, user);
    else users.set(to, (users.get(to) ?? new Set()).add(user));
  };
  for (const [user, on] of chosen.rests) if (!isMadeUp(user)) for (const to of on) add(to, user);
  return users;
}

function sayUser(document: TeardownDocument, name: string): string {
  const { map } = document;
  const index = indexOf(map);
  const [kind, of] = splitStep(name);
  if (kind === 'target') {
    const [work, part] = splitStep(of);
    return `${inText(index.part.get(part)?.name ?? part)} ${WORK[work as keyof typeof WORK]}`;
  }
  if (kind === 'look') return `for the look: ${inText(index.look.get(of)?.name ?? of)}`;
  if (kind === 'job') return `for the small job: ${inText(index.job.get(of)?.name ?? of)}`;
  if (kind === 'again') return `so that it can go back: ${inText(stepTitle(map, of))}`;
  if (kind === 'off') return `so that ${inText(index.part.get(of)?.name ?? of)} can come off`;
  if (kind === 'open') return `so that ${inText(index.join.get(of)?.name ?? of)} can be opened and closed`;
  return `so that ${inText(index.support.get(of)?.name ?? of)} can be set up`;
}

function askedOf(document: TeardownDocument, step: string): string[] {
  const stated = document.map.stated.filter((s) => !s.only_if && s.steps.some((x) => x === step));
  return [
    ...stated.map((s) => `stated by ${s.name}`),
    ...(document.also.some((x) => x === step) ? ['asked for by the shop'] : []),
  ];
}
const MOST = 3;
const join = (words: readonly string[]): string =>
  words.length <= MOST ? words.join('; ') : `${words.slice(0, MOST).join('; ')}; and ${words.length - MOST} more`;
