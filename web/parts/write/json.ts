/** A document as it is being written: any figure may still be text, any field may still be missing. */
export type Json = string | number | boolean | null | readonly Json[] | { readonly [key: string]: Json };
export type Table = { readonly [key: string]: Json };
/** Where in the document: names of fields, numbers of list items from 0. */
export type Path = readonly (string | number)[];

export const isTable = (v: Json | undefined): v is Table => typeof v === 'object' && v !== null && !Array.isArray(v);
export const isList = (v: Json | undefined): v is readonly Json[] => Array.isArray(v);
export const tableOf = (v: Json | undefined): Table => (isTable(v) ? v : {});
export const listOf = (v: Json | undefined): readonly Json[] => (isList(v) ? v : []);
export const textOf = (v: Json | undefined): string =>
  typeof v === 'string' ? v : typeof v === 'number' || typeof v === 'boolean' ? String(v) : '';

/** What stands at a place. */
export function at(whole: Json | undefined, path: Path): Json | undefined {
  let here = whole;
  for (const step of path)
    here =
      typeof step === 'number'
        ? listOf(here)[step]
        : Object.hasOwn(tableOf(here), step)
          ? tableOf(here)[step]
          : undefined;
  return here;
}

/** The same document with one place changed; `undefined` takes the field away. What is not there yet is made. */
export function put(whole: Json | undefined, path: Path, value: Json | undefined): Json {
  const [step, ...rest] = path;
  if (step === undefined) return value ?? null;
  if (typeof step === 'number') {
    const list = [...listOf(whole)];
    if (rest.length === 0 && value === undefined) list.splice(step, 1);
    else list[step] = put(list[step], rest, value);
    return list;
  }
  const table = tableOf(whole);
  if (rest.length > 0 || value !== undefined) return { ...table, [step]: put(table[step], rest, value) };
  const { [step]: _gone, ...left } = table;
  return left;
}

/** Lists that stay when their last item goes: the document does not read without them. */
const KEPT = new Set(['actions', 'cases', 'facts', 'first_of', 'later_of']);

/** Takes a list item away, and an optional list with its last item. */
export function drop(whole: Json, path: Path): Json {
  const left = put(whole, path, undefined);
  const list = path.slice(0, -1);
  const emptied = typeof path.at(-1) === 'number' && listOf(at(left, list)).length === 0;
  return emptied && !KEPT.has(String(list.at(-1))) ? put(left, list, undefined) : left;
}

export const add = (whole: Json, list: Path, item: Json): Json => put(whole, list, [...listOf(at(whole, list)), item]);

/** An item of a list one place up or down; at the ends nothing moves. */
export function move(whole: Json, list: Path, from: number, to: number): Json {
  const items = [...listOf(at(whole, list))];
  const item = items[from];
  if (item === undefined || to < 0 || to >= items.length) return whole;
  items.splice(from, 1);
  items.splice(to, 0, item);
  return put(whole, list, items);
}
