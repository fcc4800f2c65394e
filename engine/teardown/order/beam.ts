import type { OrderItem, OrderTerms } from './items.ts';
import { FACES, toolWords, totalMinutes, type Walked } from './walk.ts';

interface State {
  readonly words: Uint32Array;
  readonly face: number;
  readonly tool: number;
  readonly minutes: number;
  readonly cost: number;
  readonly flips: number;
  readonly changes: number;
  readonly last: number;
  readonly before: State | null;
}

/**
 * Dynamic programming over (set done, face, tools), one thing more in each round; of a round the `width` cheapest states
 * are kept. Where none is dropped the order found is the best there is. Null where no order meets all clauses.
 */
export function beamOrder(items: readonly OrderItem[], terms: OrderTerms, width: number): Walked | null {
  const n = items.length;
  const tools = toolWords(items, terms);
  const all = totalMinutes(items);
  const size = Math.max(1, (n + 31) >>> 5);
  const masks = items.map((i) => i.clauses.map((clause) => maskOf(clause, size)));
  let states: State[] = [
    {
      words: new Uint32Array(size),
      face: terms.face ? FACES[terms.face] : 0,
      tool: tools.start,
      minutes: 0,
      cost: 0,
      flips: 0,
      changes: 0,
      last: -1,
      before: null,
    },
  ];
  for (let round = 0; round < n; round++) {
    const ways: { s: State; i: number; cost: number }[] = [];
    for (const s of states)
      for (let i = 0; i < n; i++) {
        if ((s.words[i >>> 5]! >>> (i & 31)) & 1 || !masks[i]!.every((m) => meets(m, s.words))) continue;
        ways.push({ s, i, cost: s.cost + added(s, items[i]!, tools.of[i]!, terms, all).cost });
      }
    ways.sort((a, b) => a.cost - b.cost);
    const next = new Map<string, State>();
    for (const { s, i } of ways) {
      if (next.size >= width) break;
      const made = step(s, i, items[i]!, tools.of[i]!, terms, all);
      const key = `${String.fromCharCode(...new Uint16Array(made.words.buffer))}${made.face}/${made.tool}`;
      if (!next.has(key)) next.set(key, made);
    }
    if (next.size === 0) return null;
    states = [...next.values()];
  }
  const best = states.reduce((a, b) => (b.cost < a.cost - 1e-12 ? b : a));
  const order: number[] = [];
  for (let s: State | null = best; s && s.last >= 0; s = s.before) order.unshift(s.last);
  return { order, cost: best.cost, flips: best.flips, toolChanges: best.changes };
}

function maskOf(clause: readonly number[], size: number): Uint32Array {
  const mask = new Uint32Array(size);
  for (const i of clause) mask[i >>> 5]! |= 1 << (i & 31);
  return mask;
}
const meets = (mask: Uint32Array, words: Uint32Array): boolean => {
  for (let k = 0; k < mask.length; k++) if (mask[k]! & words[k]!) return true;
  return false;
};
function added(s: State, item: OrderItem, takes: number, terms: OrderTerms, all: number) {
  const wants = FACES[item.face];
  const flip = wants && s.face && wants !== s.face ? 1 : 0;
  const change = takes && s.tool && takes !== s.tool ? 1 : 0;
  const minutes = s.minutes + item.minutes;
  return {
    flip,
    change,
    minutes,
    cost: flip * terms.flip_min + change * terms.toolChange_min + (item.weight * minutes) / all,
  };
}
function step(s: State, i: number, item: OrderItem, takes: number, terms: OrderTerms, all: number): State {
  const words = s.words.slice();
  words[i >>> 5]! |= 1 << (i & 31);
  const more = added(s, item, takes, terms, all);
  return {
    words,
    face: FACES[item.face] || s.face,
    tool: takes || s.tool,
    minutes: more.minutes,
    cost: s.cost + more.cost,
    flips: s.flips + more.flip,
    changes: s.changes + more.change,
    last: i,
    before: s,
  };
}
