import { isTable, type Json, listOf, type Table, tableOf } from '../../../parts/write/json.ts';

/** A limit as a choice of kinds. What two kinds share stays when the kind changes. */
export const KINDS = [
  { value: 'hours_h', text: 'hours' },
  { value: 'landings', text: 'landings' },
  { value: 'counted', text: 'by its formula' },
  { value: 'months', text: 'months' },
  { value: 'days', text: 'days' },
  { value: 'on', text: 'a day of the calendar' },
  { value: 'next_inspection', text: 'the next inspection' },
  { value: 'before_further_flight', text: 'before further flight' },
  { value: 'first_of', text: 'whichever comes first' },
  { value: 'later_of', text: 'whichever comes later' },
  { value: 'when', text: 'depends on a condition' },
] as const;
export type Kind = (typeof KINDS)[number]['value'];
const FIGURES: readonly Kind[] = ['hours_h', 'landings', 'counted', 'months', 'days'];
export const isFigure = (kind: Kind | null): boolean => kind !== null && FIGURES.includes(kind);
export const isGroup = (kind: Kind | null): kind is 'first_of' | 'later_of' =>
  kind === 'first_of' || kind === 'later_of';

export function kindOf(limit: Json | undefined): Kind | null {
  if (!isTable(limit)) return null;
  return KINDS.find((k) => Object.hasOwn(limit, k.value))?.value ?? null;
}

/** A limit of a kind with nothing filled in but what is usual. */
export function blank(kind: Kind): Table {
  switch (kind) {
    case 'hours_h':
    case 'landings':
      return { [kind]: '', is: 'at', of: 'part', since: 'new' };
    case 'counted':
      return { counted: '', is: 'at' };
    case 'months':
    case 'days':
      return { [kind]: '', is: 'at', since: 'effective' };
    case 'on':
      return { on: '', is: 'at' };
    case 'next_inspection':
      return { next_inspection: '' };
    case 'before_further_flight':
      return { before_further_flight: true };
    case 'first_of':
    case 'later_of':
      return { [kind]: [blank('hours_h'), blank('months')] };
    case 'when':
      return { when: '', limit: blank('hours_h'), otherwise: blank('hours_h') };
  }
}

/** The first plain limit within a tree: what stays when a group becomes one limit. */
function firstPlain(limit: Table): Table {
  const kind = kindOf(limit);
  if (isGroup(kind)) return firstPlain(tableOf(listOf(limit[kind])[0]));
  return kind === 'when' ? firstPlain(tableOf(limit.limit)) : limit;
}

/** The limit as another kind: a plain one goes into a group, a group keeps its members, figures keep what they share. */
export function asKind(limit: Json | undefined, kind: Kind): Table {
  const was = kindOf(limit);
  const old = tableOf(limit);
  if (was === kind) return old;
  if (was === null) return blank(kind);
  if (isGroup(kind))
    return { [kind]: isGroup(was) ? (old[was] ?? []) : [old, blank(was === 'months' ? 'hours_h' : 'months')] };
  if (kind === 'when') return { when: '', limit: old, otherwise: blank('hours_h') };
  const plain = firstPlain(old);
  const from = kindOf(plain);
  if (from === kind) return plain;
  const base = blank(kind);
  const kept: Record<string, Json> = {};
  for (const key of ['is', 'of', 'since'])
    if (key in plain && (key in base || key === 'since')) kept[key] = plain[key]!;
  if (!isFigure(kind)) delete kept.since;
  if (kind === 'counted' && kept.since === 'new') delete kept.since;
  const figure = isFigure(kind) && from !== null && isFigure(from) ? { [kind]: plain[from]! } : {};
  return { ...base, ...kept, ...figure };
}

/** One member less; of two, the one that stays takes the place of the group. */
export function without(group: Table, kind: 'first_of' | 'later_of', index: number): Json {
  const left = listOf(group[kind]).filter((_, i) => i !== index);
  return left.length === 1 ? left[0]! : { [kind]: left };
}
export const withOneMore = (group: Table, kind: 'first_of' | 'later_of'): Table => ({
  [kind]: [...listOf(group[kind]), blank('hours_h')],
});
