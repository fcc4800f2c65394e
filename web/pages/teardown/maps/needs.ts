import {
  at,
  isList,
  type Json,
  listOf,
  type Path,
  put,
  type Table,
  tableOf,
  textOf,
} from '../../../parts/write/json.ts';

/** A need as the form shows it: ways, of which any one will do; a way is a list of steps, all of them. */
export interface ShownNeed {
  readonly ways: readonly (readonly string[])[];
  readonly because: string;
}
export function needShown(need: Json | undefined): ShownNeed {
  if (typeof need === 'string') return { ways: [[need]], because: '' };
  const { any, because } = tableOf(need);
  const ways = listOf(any).map((w) => (isList(w) ? w.map(textOf) : [textOf(w)]));
  return { ways: ways.length ? ways : [['']], because: textOf(because) };
}
/** The shortest form in which the document says the same; a need without a step is none. */
export function needWritten({ ways, because }: ShownNeed): Json | undefined {
  const left = ways.filter((w) => w.length > 0);
  const [only] = left;
  if (only === undefined) return undefined;
  if (left.length === 1 && only.length === 1 && because === '') return only[0]!;
  return {
    any: left.map((w): Json => (w.length === 1 ? w[0]! : [...w])),
    ...(because === '' ? {} : { because }),
  };
}

export interface StepChoice {
  readonly value: string;
  readonly text: string;
}
export interface StepChoices {
  readonly off: readonly StepChoice[];
  readonly open: readonly StepChoice[];
  readonly support: readonly StepChoice[];
}
const named = (kind: string, list: Json | undefined): StepChoice[] =>
  listOf(list).flatMap((v) => {
    const thing = tableOf(v);
    const id = textOf(thing.id);
    return id === '' || thing.stays === true ? [] : [{ value: `${kind}:${id}`, text: textOf(thing.name) || id }];
  });
/** Every step that can be needed: parts off, rows open, supports set up. */
export const stepChoices = (draft: Table): StepChoices => ({
  off: named('off', draft.parts),
  open: named('open', draft.joins),
  support: named('support', draft.supports),
});

const STEP = /^(off|open|support):/;
/** The same document with an id renamed wherever it is named: stacks, needs, looks, orders. */
export function renamed(draft: Table, kind: 'off' | 'open' | 'support', from: string, to: string): Table {
  const step = (s: string): string => (STEP.test(s) && s === `${kind}:${from}` ? `${kind}:${to}` : s);
  const bare = new Set(kind === 'off' ? ['layers', 'at', 'part', 'only_if'] : kind === 'open' ? ['at'] : []);
  const walk = (v: Json, field: string): Json => {
    if (typeof v === 'string') return bare.has(field) && v === from ? to : step(v);
    if (isList(v)) return v.map((x) => walk(x, field));
    if (typeof v === 'object' && v !== null)
      return Object.fromEntries(Object.entries(v).map(([k, x]) => [k, walk(x, k)]));
    return v;
  };
  return tableOf(walk(draft, ''));
}
/** A name that is not taken yet: left-rib-9, left-rib-9-2. */
export function freshId(taken: readonly string[], wanted: string): string {
  if (!taken.includes(wanted)) return wanted;
  for (let n = 2; ; n++) if (!taken.includes(`${wanted}-${n}`)) return `${wanted}-${n}`;
}
export const idsOf = (list: Json | undefined): string[] => listOf(list).map((v) => textOf(tableOf(v).id));

/** The thing at a place under another id, every place that names it with it: never under none, nor under one that is taken. */
export function renamedAt(draft: Table, path: Path, kind: 'off' | 'open' | 'support', wanted: string): Table {
  const from = textOf(tableOf(at(draft, path)).id);
  const others = ['parts', 'joins', 'supports'].flatMap((list) => idsOf(draft[list])).filter((id) => id !== from);
  const to = freshId(others, wanted || from || 'thing');
  return tableOf(put(from === '' ? draft : renamed(draft, kind, from, to), [...path, 'id'], to));
}
