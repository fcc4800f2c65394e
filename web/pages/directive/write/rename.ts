import { at, isList, isTable, type Json, put, type Table, tableOf, textOf } from '../../../parts/write/json.ts';
import type { Draft } from './draft.ts';

type Change = (table: Table) => Table;
function everywhere(v: Json, change: Change): Json {
  if (isList(v)) return v.map((x) => everywhere(x, change));
  if (!isTable(v)) return v;
  return change(Object.fromEntries(Object.entries(v).map(([k, x]) => [k, everywhere(x, change)])));
}
const within = (draft: Draft, change: Change): Draft => ({
  ...draft,
  ...(draft.actions === undefined ? {} : { actions: everywhere(draft.actions, change) }),
  ...(draft.cases === undefined ? {} : { cases: everywhere(draft.cases, change) }),
});

/** Gives an action another short word, wherever this rule speaks of it. */
export function renameAction(draft: Draft, index: number, id: string): Draft {
  const old = textOf(at(draft, ['actions', index, 'id']));
  const mine = (t: Table) => t.directive === undefined || t.directive === draft.number;
  const follow: Change = (t) => (old !== '' && t.action === old && mine(t) ? { ...t, action: id } : t);
  return tableOf(put(within(draft, follow), ['actions', index, 'id'], id));
}

/** Gives the rule another number, also where its limits count from its own looks. */
export function renameNumber(draft: Draft, number: string): Draft {
  const old = textOf(draft.number);
  const follow: Change = (t) =>
    'directive' in t && textOf(t.directive) === old && 'action' in t ? { ...t, directive: number } : t;
  return { ...within(draft, follow), number };
}
