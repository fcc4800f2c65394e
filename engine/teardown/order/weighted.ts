/** What is known early: things with weights and times, each known when it is done. */
export interface WeightedThing {
  readonly weight: number;
  readonly time: number;
}
export interface WeightedOrder {
  readonly order: readonly number[];
  /** Sum of weight times time of completion. */
  readonly cost: number;
}

/**
 * The order that knows the heaviest earliest: least sum of weight times completion, of chains.
 *
 * Exact: again and again the beginning of a chain with the greatest ratio of weights to times is taken, up to where that
 * ratio is reached. Not valid where a thing waits for two others.
 *
 * @param chains places in the list, each chain in its order; together every thing once; times above zero
 * @see Pinedo, Scheduling, chapter 3: total weighted completion time with chains
 */
export function weightedOrder(things: readonly WeightedThing[], chains: readonly (readonly number[])[]): WeightedOrder {
  const left = chains.map((c) => [...c]);
  const order: number[] = [];
  for (;;) {
    let best: { chain: number; length: number; ratio: number } | null = null;
    left.forEach((chain, c) => {
      const head = headOf(things, chain);
      if (head && (!best || head.ratio > best.ratio)) best = { chain: c, ...head };
    });
    if (!best) break;
    const { chain, length } = best as { chain: number; length: number };
    order.push(...left[chain]!.splice(0, length));
  }
  return { order, cost: weightedCost(things, order) };
}

/** The beginning of a chain with the greatest ratio of weights to times. */
function headOf(things: readonly WeightedThing[], chain: readonly number[]): { length: number; ratio: number } | null {
  let [weights, times, best] = [0, 0, null as { length: number; ratio: number } | null];
  chain.forEach((i, k) => {
    weights += things[i]!.weight;
    times += things[i]!.time;
    if (!best || weights / times > best.ratio) best = { length: k + 1, ratio: weights / times };
  });
  return best;
}

export function weightedCost(things: readonly WeightedThing[], order: readonly number[]): number {
  let [at, sum] = [0, 0];
  for (const i of order) {
    at += things[i]!.time;
    sum += things[i]!.weight * at;
  }
  return sum;
}
