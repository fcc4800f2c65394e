import type { Project } from '../model.ts';

/**
 * Capacities and demands in fields of whole words, each with a guard bit above it. A demand fits where taking it from
 * what is free leaves every guard standing: one subtraction for several resources.
 */
export interface Packed {
  /** Words that hold all resources. */
  readonly words: number;
  /** What is free when nothing is taken, guards set: a figure per word. */
  readonly free: Int32Array;
  readonly guards: Int32Array;
  /** Demand of job j in word w: `demands[j * words + w]`. */
  readonly demands: Int32Array;
}

const BITS = 31;

export function packedOf(project: Project): Packed {
  const kinds = project.capacities.length;
  const place = new Int32Array(kinds);
  const word = new Int32Array(kinds);
  let words = 1;
  let bits = 0;
  project.capacities.forEach((capacity, k) => {
    const width = 33 - Math.clz32(capacity);
    if (bits + width > BITS) {
      words++;
      bits = 0;
    }
    word[k] = words - 1;
    place[k] = bits;
    bits += width;
  });
  const free = new Int32Array(words);
  const guards = new Int32Array(words);
  const demands = new Int32Array(project.count * words);
  project.capacities.forEach((capacity, k) => {
    const guard = 1 << (place[k]! + 32 - Math.clz32(capacity));
    guards[word[k]!]! |= guard;
    free[word[k]!]! |= guard | (capacity << place[k]!);
    for (let j = 0; j < project.count; j++)
      if (project.durations[j]! > 0) demands[j * words + word[k]!]! |= project.demands[j * kinds + k]! << place[k]!;
  });
  return { words, free, guards, demands };
}
