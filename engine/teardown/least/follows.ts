import type { Chain } from './chain.ts';
import type { Core } from './reduce.ts';
import type { Simplex } from './simplex.ts';

/** What follows from the bounds at once: what is not reached any more is out, what a chosen thing needs is in.
 * False where nothing can lie there. */
export function follows(
  core: Core,
  chain: Chain,
  { low, high }: Simplex,
  set: (j: number, value: 0 | 1) => void,
): boolean {
  const { net, musts } = core;
  const allowed = new Uint8Array(net.things);
  for (let j = 0; j < net.things; j++) allowed[j] = high[j]! > 0.5 ? 1 : 0;
  chain.run(allowed);
  const chosen: number[] = [];
  for (let j = 0; j < net.things; j++) {
    if (low[j]! > 0.5) {
      if (!chain.joined[j]) return false;
      chosen.push(j);
    } else if (high[j]! > 0.5 && !chain.joined[j]) set(j, 0);
  }
  while (chosen.length) {
    const j = chosen.pop()!;
    const take = (k: number) => {
      if (low[k]! > 0.5) return true;
      if (high[k]! < 0.5) return false;
      set(k, 1);
      chosen.push(k);
      return true;
    };
    for (let c = net.clauseFrom[j]!; c < net.clauseFrom[j + 1]!; c++) {
      let [only, count] = [-1, 0];
      for (let e = net.memberFrom[c]!; e < net.memberFrom[c + 1]! && count < 2; e++)
        if (high[net.members[e]!]! > 0.5) [only, count] = [net.members[e]!, count + 1];
      if (count === 0 || (count === 1 && !take(only))) return false;
    }
    for (let w = 0; w < musts.words; w++)
      for (let rest = musts.bits[j * musts.words + w]!; rest !== 0; rest &= rest - 1)
        if (!take((w << 5) + 31 - Math.clz32(rest & -rest))) return false;
  }
  return true;
}
