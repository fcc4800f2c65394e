import type { Chain } from './chain.ts';
import type { Net } from './net.ts';

/** For each thing a row of bits: what stands before it, itself included, in whatever order it is reached. */
export interface Musts {
  readonly words: number;
  readonly bits: Uint32Array;
}

export const isMust = (m: Musts, j: number, k: number): boolean =>
  ((m.bits[j * m.words + (k >>> 5)]! >>> (k & 31)) & 1) === 1;

/** Things that must come before j, itself included. */
export function mustsOf(m: Musts, j: number): number[] {
  const found: number[] = [];
  for (let w = 0; w < m.words; w++)
    for (let rest = m.bits[j * m.words + w]!; rest !== 0; rest &= rest - 1)
      found.push((w << 5) + 31 - Math.clz32(rest & -rest));
  return found;
}

/** What all members of a clause have in common, into `into`; a member that is not reached is left out. */
export function common(net: Net, m: Musts, reached: Uint8Array, clause: number, into: Uint32Array): void {
  into.fill(0xffffffff);
  for (let e = net.memberFrom[clause]!; e < net.memberFrom[clause + 1]!; e++) {
    const k = net.members[e]!;
    if (!reached[k]) continue;
    const row = k * m.words;
    for (let w = 0; w < m.words; w++) into[w]! &= m.bits[row + w]!;
  }
}

/**
 * The greatest set of facts that agrees with the clauses: j needs itself and, of each clause, what all its members need.
 * Found by going through the things in an order in which they can be reached, until nothing falls away.
 */
export function allMusts(net: Net, chain: Chain): Musts {
  const words = (net.things + 31) >>> 5;
  const m: Musts = { words, bits: new Uint32Array(net.things * words).fill(0xffffffff) };
  const row = new Uint32Array(words);
  const shared = new Uint32Array(words);
  for (let changed = true; changed; ) {
    changed = false;
    for (let i = 0; i < chain.count; i++) {
      const j = chain.order[i]!;
      row.fill(0);
      for (let c = net.clauseFrom[j]!; c < net.clauseFrom[j + 1]!; c++) {
        common(net, m, chain.joined, c, shared);
        for (let w = 0; w < words; w++) row[w]! |= shared[w]!;
      }
      row[j >>> 5]! |= 1 << (j & 31);
      const at = j * words;
      for (let w = 0; w < words; w++) {
        if (m.bits[at + w] === row[w]) continue;
        m.bits[at + w] = row[w]!;
        changed = true;
      }
    }
  }
  return m;
}
