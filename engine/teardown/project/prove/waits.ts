import type { Project } from '../model.ts';

/** "to is at least from + by", for both sides of every wait; job number `count` is the end of all. */
export interface Waits {
  readonly from: Int32Array;
  readonly to: Int32Array;
  readonly by: Int32Array;
  /** Waits that go out from a figure: numbers `at[x]` to below `at[x + 1]`. */
  readonly at: Int32Array;
  /** Waits that come in, as numbers of waits. */
  readonly into: readonly Int32Array[];
}

export function waitsOf(project: Project): Waits {
  const { count, durations, successors } = project;
  const pairs: [number, number, number][] = [];
  const add = (a: number, b: number, by: number) => pairs.push([2 * a, 2 * b, by], [2 * b + 1, 2 * a + 1, by]);
  for (let j = 0; j < count; j++) {
    for (const s of successors[j]!) add(j, s, durations[j]!);
    if (successors[j]!.length === 0) add(j, count, durations[j]!);
  }
  pairs.sort((a, b) => a[0] - b[0]);
  const figures = 2 * count + 2;
  const at = new Int32Array(figures + 1);
  for (const [x] of pairs) at[x + 1]!++;
  for (let x = 0; x < figures; x++) at[x + 1]! += at[x]!;
  const into: number[][] = Array.from({ length: figures }, () => []);
  pairs.forEach(([, y], e) => {
    into[y]!.push(e);
  });
  return {
    from: Int32Array.from(pairs, (p) => p[0]),
    to: Int32Array.from(pairs, (p) => p[1]),
    by: Int32Array.from(pairs, (p) => p[2]),
    at,
    into: into.map((list) => Int32Array.from(list)),
  };
}
