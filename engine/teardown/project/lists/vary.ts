import type { Draw } from './draw.ts';

/** Makes lists that keep the precedence: at random, from two parents, by small moves. No memory is taken while it runs. */
export interface Variation {
  /** A list drawn at random, urgent jobs rather early. */
  sample(into: Int32Array): void;
  /** Ends and beginning of `father`, and between two places the order of `mother`. */
  cross(father: Int32Array, mother: Int32Array, into: Int32Array): void;
  /** Swaps neighbours with this chance each, and moves one job within what it waits for and what waits for it. */
  mutate(list: Int32Array, chance: number): void;
}

export function variation(
  count: number,
  before: readonly ArrayLike<number>[],
  urgency: ArrayLike<number> | null,
  draw: Draw,
): Variation {
  const waits = new Uint8Array(count * count);
  const after: number[][] = Array.from({ length: count }, () => []);
  for (let j = 0; j < count; j++)
    for (let i = 0; i < before[j]!.length; i++) {
      const p = before[j]![i]!;
      if (!waits[p * count + j]) after[p]!.push(j);
      waits[p * count + j] = 1;
    }
  const next = after.map((list) => Int32Array.from(list));
  const needs = new Int32Array(count);
  for (const list of after) for (const j of list) needs[j]!++;
  const open = new Int32Array(count);
  const ready = new Int32Array(count);
  const taken = new Uint8Array(count);

  const choose = (n: number): number => {
    let at = draw.below(n);
    if (urgency)
      for (let tries = draw.below(5); tries > 0; tries--) {
        const other = draw.below(n);
        if (urgency[ready[other]!]! < urgency[ready[at]!]!) at = other;
      }
    return at;
  };
  return {
    sample(into) {
      open.set(needs);
      let n = 0;
      for (let j = 0; j < count; j++) if (open[j] === 0) ready[n++] = j;
      for (let i = 0; i < count; i++) {
        const at = choose(n);
        const job = ready[at]!;
        ready[at] = ready[--n]!;
        into[i] = job;
        const list = next[job]!;
        for (let s = 0; s < list.length; s++) if (--open[list[s]!]! === 0) ready[n++] = list[s]!;
      }
    },
    cross(father, mother, into) {
      let from = draw.below(count + 1);
      let to = draw.below(count + 1);
      if (from > to) [from, to] = [to, from];
      taken.fill(0);
      let n = 0;
      for (; n < from; n++) {
        into[n] = father[n]!;
        taken[father[n]!] = 1;
      }
      for (let i = 0; n < to; i++)
        if (!taken[mother[i]!]) {
          into[n++] = mother[i]!;
          taken[mother[i]!] = 1;
        }
      for (let i = from; n < count; i++) if (!taken[father[i]!]) into[n++] = father[i]!;
    },
    mutate(list, chance) {
      for (let i = 1; i < count; i++) {
        if (!draw.chance(chance)) continue;
        const a = list[i - 1]!;
        const b = list[i]!;
        if (waits[a * count + b]) continue;
        list[i - 1] = b;
        list[i] = a;
      }
    },
  };
}
