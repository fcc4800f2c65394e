import type { MapFinding } from '../model.ts';
import type { OperationToDo } from './crew.ts';

/** b begins no later than `most` minutes after a has begun. */
export interface Life {
  readonly a: number;
  readonly b: number;
  readonly most: number;
}
/** Operations that hang together by working lives, and what lies between them: begun only when all can follow. */
export interface Together {
  /** Each after what it waits for. */
  readonly members: readonly number[];
  readonly lives: readonly Life[];
  /** Numbers outside that must be finished before any of it begins. */
  readonly outside: readonly number[];
}

/**
 * What must be planned together because a longest wait holds it together.
 *
 * How: operations linked by `within` are joined with everything on the paths of precedence between them. A life that is
 * shorter than the least time between the two starts cannot be kept by any plan: it is named, and planned without.
 * @param order every operation after what it waits for
 */
export function togetherOf(
  work: readonly OperationToDo[],
  order: readonly number[],
  lives: readonly Life[],
  minutes: ArrayLike<number>,
): { together: Together[]; findings: MapFinding[] } {
  const findings: MapFinding[] = [];
  const kept = lives.filter(({ a, b, most }) => {
    const least = leastBetween(work, order, minutes, a, b);
    if (least <= most) return true;
    findings.push(tooShort(work[a]!, work[b]!, most, least));
    return false;
  });
  const root = work.map((_, i) => i);
  const find = (i: number): number => {
    while (root[i] !== i) i = root[i] = root[root[i]!]!;
    return i;
  };
  for (const { a, b } of kept) root[find(a)] = find(b);
  const inside = new Set(kept.flatMap(({ a, b }) => [a, b]));
  for (let grew = true; grew; ) {
    grew = false;
    for (const g of new Set([...inside].map(find))) {
      const members = order.filter((i) => inside.has(i) && find(i) === g);
      for (const i of between(work, order, members)) {
        if (inside.has(i) && find(i) === g) continue;
        if (inside.has(i)) root[find(i)] = find(g);
        else root[i] = g;
        inside.add(i);
        grew = true;
      }
      if (grew) break;
    }
  }
  const groups = [...new Set([...inside].map(find))].sort((x, y) => x - y);
  const together = groups.map((g): Together => {
    const members = order.filter((i) => inside.has(i) && find(i) === g);
    const own = new Set(members);
    return {
      members,
      lives: kept.filter(({ a }) => own.has(a)),
      outside: [...new Set(members.flatMap((i) => work[i]!.before.filter((b) => !own.has(b))))],
    };
  });
  return { together, findings };
}

/** Least minutes from the start of a to the start of b, by need alone; 0 where b does not wait for a. */
function leastBetween(
  work: readonly OperationToDo[],
  order: readonly number[],
  minutes: ArrayLike<number>,
  a: number,
  b: number,
): number {
  const far = new Map<number, number>([[a, 0]]);
  for (const i of order) {
    if (i === a) continue;
    const reached = work[i]!.before.flatMap((p) => (far.has(p) ? [far.get(p)! + minutes[p]!] : []));
    if (reached.length > 0) far.set(i, Math.max(...reached));
  }
  return far.get(b) ?? 0;
}

/** On a path of precedence from one of these to another of these. */
function between(work: readonly OperationToDo[], order: readonly number[], members: readonly number[]): number[] {
  const own = new Set(members);
  const behind = new Set<number>();
  for (const i of order) if (work[i]!.before.some((p) => own.has(p) || behind.has(p))) behind.add(i);
  const ahead = new Set<number>();
  for (const i of [...order].reverse()) if (own.has(i) || ahead.has(i)) for (const p of work[i]!.before) ahead.add(p);
  return order.filter((i) => !own.has(i) && behind.has(i) && ahead.has(i));
}

function tooShort(a: OperationToDo, b: OperationToDo, most: number, least: number): MapFinding {
  return {
    code: 'life-too-short',
    text: `"${b.operation.title}" must begin within ${most} min of the start of "${a.operation.title}"; what lies between takes ${least} min. It is planned as soon after as it can be.`,
    about: [a.operation.id, b.operation.id],
    remedy: 'Share the work out to more hands, take a sealant with a longer working life, or seal in two lots',
  };
}
