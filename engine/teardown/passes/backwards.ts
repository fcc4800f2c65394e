/** Something that is put in or closed: its name, how late it should come, and what must come after it. */
export interface Piece {
  readonly name: string;
  /** Higher comes later; among equals what was given first comes last. */
  readonly late: number;
  /** All of these come after it: rows of a part, the attach bolts. */
  readonly later: readonly string[];
  /** Of each list one way, a list of pieces that all come after it; given up in this order of `kind` if they go round in a circle. */
  readonly access: readonly { readonly kind: Access; readonly ways: readonly (readonly string[])[] }[];
}
export type Access = 'way out' | 'stated' | 'closing' | 'way back';
const GIVEN_UP: readonly Access[] = ['way out', 'closing', 'stated', 'way back'];

export interface Sequence {
  /** In the order in which they are put together. */
  readonly names: readonly string[];
  /** For each piece those that must be in before it, by their access as it was met. */
  readonly waits: ReadonlyMap<string, readonly string[]>;
  readonly gaveUp: readonly { readonly name: string; readonly kind: Access }[];
}

/**
 * The order in which pieces go together, found from the finished wing backwards.
 *
 * What: backwards in time, a piece may leave as soon as all that must come after it have left, and of each access one
 * way is free. Of those that may, the latest leaves first. How: forward chaining over the reversed time, so that
 * alternatives need no choice beforehand. Where nothing may leave, a wish is given up, the weakest kind first, and said.
 * Not valid for: `later` that goes round in a circle (a part after a row that holds it cannot).
 * @returns every piece once
 */
export function togetherOf(pieces: readonly Piece[]): Sequence {
  const left = new Set(pieces.map((p) => p.name));
  const backwards: string[] = [];
  const waits = new Map<string, string[]>();
  const gaveUp: { name: string; kind: Access }[] = [];
  const free = (way: readonly string[]) => way.every((n) => !left.has(n));
  const ready = (p: Piece, without: ReadonlySet<Access>) =>
    free(p.later) && p.access.every((a) => without.has(a.kind) || a.ways.some(free));
  const order = pieces.map((p, at) => ({ p, at })).sort((a, b) => b.p.late - a.p.late || a.at - b.at);
  while (left.size > 0) {
    let found: Piece | undefined;
    const without = new Set<Access>();
    for (let k = 0; k <= GIVEN_UP.length && !found; k++) {
      if (k > 0) without.add(GIVEN_UP[k - 1]!);
      found = order.find(({ p }) => left.has(p.name) && ready(p, without))?.p;
    }
    found ??= order.find(({ p }) => left.has(p.name))!.p;
    for (const a of found.access) {
      const way = a.ways.find(free);
      if (!way) {
        gaveUp.push({ name: found.name, kind: a.kind });
        continue;
      }
      for (const n of way) waits.set(n, [...(waits.get(n) ?? []), found.name]);
    }
    left.delete(found.name);
    backwards.push(found.name);
  }
  return { names: backwards.reverse(), waits, gaveUp };
}
