import { shownWord } from '../../../parts/write/figures.ts';

/** Names of fields as the form shows them. */
const NAMES: Readonly<Record<string, string>> = {
  affects: 'whom it affects',
  except: 'excepted serials',
  first: 'first due',
  repeat: 'then again',
  counts: 'counted figure',
  called: 'what the figure is called',
  expression: 'formula',
  expect: 'what must come out',
  facts: 'figures',
  facts_at: 'earlier figures',
  hours_h: 'hours',
  id: 'short name',
  does: 'what it is to do',
  looks_at: 'what it looks at',
  since: 'counted from',
  when: 'condition',
  condition: 'condition',
  on: 'day',
  reference: 'text read at',
  known: 'how well known',
  extract: 'part of the text',
  unsafe_condition: 'why it was issued',
  forbids_fitting: 'may no longer be fitted',
  started_by: 'a finding starts it',
  ended_by: 'what ends it',
  credit: 'earlier work',
  missing_papers: 'where papers are missing',
  not_before: 'done on or after',
};
const LISTS: Readonly<Record<string, string>> = {
  actions: 'action',
  cases: 'case',
  models: 'model',
  serials: 'serials',
  first_of: 'limit',
  later_of: 'limit',
  last_look: 'look',
};

/** Where a problem lies, as a person would say it: "Action 1, first due, limit 2, months". */
export function placeInWords(path: string): string {
  if (path === '') return 'The document';
  const facts = /^(cases\.\d+\.(?:facts|facts_at\.\w+\.facts))\.(.*)$/.exec(path);
  const steps = (facts?.[1] ?? path).split('.');
  const words: string[] = [];
  for (let i = 0; i < steps.length; i++) {
    const step = steps[i]!;
    const next = steps[i + 1];
    if (next !== undefined && /^\d+$/.test(next)) {
      words.push(`${LISTS[step] ?? NAMES[step] ?? shownWord(step)} ${Number(next) + 1}`);
      i += 1;
    } else words.push(NAMES[step] ?? shownWord(step));
  }
  if (facts?.[2]) words.push(facts[2]);
  const said = words.join(', ');
  return said.charAt(0).toUpperCase() + said.slice(1);
}
