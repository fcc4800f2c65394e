import { randomSource, type teardown } from '../../engine/index.ts';

export type AndOrProblem = teardown.AndOrProblem;
const [PARTS, JOINS] = [300, 600];

/** Builds a map of 300 parts and 600 joins. Parts are named 0 to 299; access is named by the parts that must be off. */
export interface Map300 {
  int(n: number): number;
  chance(p: number): boolean;
  pick<T>(of: readonly T[]): T;
  shuffled<T>(of: readonly T[]): T[];
  /** So many different numbers of 0 to `of`, as the parts that `part` makes of them. */
  some(count: number, part: (i: number) => number, of: number): number[];
  /** A row through these parts, opened after one of each list. */
  join(through: readonly number[], access: readonly (readonly number[])[]): void;
  /** Rows more up to 600, through two parts each. */
  fill(access: (part: () => number) => readonly (readonly number[])[]): void;
  /** The problem, with so many looks that pay if access is cheap. */
  problem(targets: readonly number[], looks: number): AndOrProblem;
}

export function builderOf(seed: number, kind: number): Map300 {
  const random = randomSource(seed, kind);
  const int = (n: number) => Math.floor(random.next() * n);
  const shuffled = <T>(of: readonly T[]): T[] => {
    const a = [...of];
    for (let i = a.length - 1; i > 0; i--) {
      const k = int(i + 1);
      [a[i], a[k]] = [a[k]!, a[i]!];
    }
    return a;
  };
  const joins: { through: readonly number[]; access: readonly (readonly number[])[] }[] = [];
  const join: Map300['join'] = (through, access) => {
    /** A row is not reached by taking off what it holds. */
    const others = access.map((list) => list.filter((p) => !through.includes(p))).filter((list) => list.length);
    joins.push({ through: [...new Set(through)], access: others });
  };
  return {
    int,
    chance: (p) => random.next() < p,
    pick: (of) => of[int(of.length)]!,
    shuffled,
    some: (count, part, of) =>
      shuffled(Array.from({ length: of }, (_, i) => i))
        .slice(0, count)
        .map(part),
    join,
    fill(access) {
      while (joins.length < JOINS) {
        const p = int(PARTS);
        const near = () => Math.max(0, Math.min(PARTS - 1, p + int(61) - 30));
        join([p, near()], access(near));
      }
    },
    problem(targets, looks) {
      if (joins.length !== JOINS) throw new Error(`${joins.length} joins`);
      const cost: number[] = [];
      const clauses: number[][][] = [];
      for (let p = 0; p < PARTS; p++) {
        cost.push(400 + int(120));
        clauses.push(joins.flatMap((j, i) => (j.through.includes(p) ? [[PARTS + i]] : [])));
      }
      for (const { access } of joins) {
        cost.push(1000 + 25 * int(14));
        clauses.push(access.map((list) => [...new Set(list)]));
      }
      open(clauses, int);
      for (let l = 0; l < looks; l++) {
        cost.push(-(500 + int(1500)));
        const [a, b, c] = [int(PARTS), int(PARTS), int(PARTS)];
        clauses.push([[a, b], ...(int(2) ? [[c, (c + 1) % PARTS]] : [])]);
      }
      return { cost, clauses, targets };
    },
  };
}

/** Where rows can never be reached, one after the other gets a way more, by a part that can be taken off. */
function open(clauses: number[][][], int: (n: number) => number): void {
  for (;;) {
    const done = new Set<number>();
    for (let more = true; more; ) {
      more = false;
      clauses.forEach((list, j) => {
        if (done.has(j) || !list.every((l) => l.some((k) => done.has(k)))) return;
        done.add(j);
        more = true;
      });
    }
    const never = clauses.flatMap((_, j) => (j >= PARTS && !done.has(j) ? [j] : []));
    if (never.length === 0) return;
    const parts = [...done].filter((j) => j < PARTS);
    const row = clauses[never[int(never.length)]!]!;
    for (const l of row)
      if (!l.some((k) => done.has(k)))
        if (parts.length) l.push(parts[int(parts.length)]!);
        else row.splice(0);
  }
}
