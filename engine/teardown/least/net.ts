/** Things, their clauses and who uses them, in flat arrays for the searches. */
export interface Net {
  readonly things: number;
  readonly cost: Float64Array;
  /** Clauses of thing j: clauseFrom[j] up to clauseFrom[j + 1]. */
  readonly clauseFrom: Int32Array;
  readonly head: Int32Array;
  /** Members of clause c: memberFrom[c] up to memberFrom[c + 1]. */
  readonly memberFrom: Int32Array;
  readonly members: Int32Array;
  /** Clauses that thing k can satisfy: useFrom[k] up to useFrom[k + 1]. */
  readonly useFrom: Int32Array;
  readonly uses: Int32Array;
}

export function netOf(cost: ArrayLike<number>, clauses: readonly (readonly (readonly number[])[])[]): Net {
  const things = clauses.length;
  const all = clauses.flatMap((list, j) => list.map((members) => ({ j, members })));
  const clauseFrom = new Int32Array(things + 1);
  const memberFrom = new Int32Array(all.length + 1);
  const useFrom = new Int32Array(things + 1);
  all.forEach(({ j, members }, c) => {
    clauseFrom[j + 1]!++;
    memberFrom[c + 1] = memberFrom[c]! + members.length;
    for (const k of members) useFrom[k + 1]!++;
  });
  for (let j = 0; j < things; j++) {
    clauseFrom[j + 1]! += clauseFrom[j]!;
    useFrom[j + 1]! += useFrom[j]!;
  }
  const members = new Int32Array(memberFrom[all.length]!);
  const uses = new Int32Array(members.length);
  const next = useFrom.slice(0, things);
  all.forEach((clause, c) => {
    members.set(clause.members, memberFrom[c]!);
    for (const k of clause.members) uses[next[k]!++] = c;
  });
  return {
    things,
    cost: Float64Array.from(cost),
    clauseFrom,
    head: Int32Array.from(all, (c) => c.j),
    memberFrom,
    members,
    useFrom,
    uses,
  };
}
