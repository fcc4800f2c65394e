import type { OrderItem, OrderTerms } from './items.ts';

export interface Walked {
  readonly order: readonly number[];
  readonly cost: number;
  readonly flips: number;
  readonly toolChanges: number;
}
/** Tools as one word each; 0 where none are asked. Things with the same tools need no change between them. */
export function toolWords(items: readonly OrderItem[], terms: OrderTerms): { of: number[]; start: number } {
  const words = new Map<string, number>([['', 0]]);
  const word = (tools: readonly string[]) => {
    const key = [...tools].sort().join('|');
    const known = words.get(key) ?? words.size;
    words.set(key, known);
    return known;
  };
  return { of: items.map((i) => word(i.tools)), start: word(terms.tools ?? []) };
}
export const FACES = { either: 0, upper: 1, lower: 2 } as const;
export const totalMinutes = (items: readonly OrderItem[]): number =>
  Math.max(
    1e-9,
    items.reduce((s, i) => s + i.minutes, 0),
  );

/** Follows an order; null where a clause is not met in time, or where it comes to cost as much as `limit`. */
export function walk(
  items: readonly OrderItem[],
  order: readonly number[],
  terms: OrderTerms,
  tools: { of: readonly number[]; start: number },
  all = totalMinutes(items),
  limit = Number.POSITIVE_INFINITY,
): Walked | null {
  const done = new Uint8Array(items.length);
  let face: number = terms.face ? FACES[terms.face] : 0;
  let tool = tools.start;
  let [flips, toolChanges, minutes, stake] = [0, 0, 0, 0];
  for (const i of order) {
    const item = items[i]!;
    for (const clause of item.clauses) {
      let met = false;
      for (const k of clause) if (done[k]) met = true;
      if (!met) return null;
    }
    done[i] = 1;
    minutes += item.minutes;
    stake += (item.weight * minutes) / all;
    const wants = FACES[item.face];
    if (wants && face && wants !== face) flips++;
    if (wants) face = wants;
    const takes = tools.of[i]!;
    if (takes && tool && takes !== tool) toolChanges++;
    if (takes) tool = takes;
    if (flips * terms.flip_min + toolChanges * terms.toolChange_min + stake >= limit) return null;
  }
  return { order, cost: flips * terms.flip_min + toolChanges * terms.toolChange_min + stake, flips, toolChanges };
}
