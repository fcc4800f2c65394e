/** One valid inequality over zero-one things: what it holds with its factors is at least `least`. */
export interface Row {
  readonly things: Int32Array;
  readonly factors: Float64Array;
  readonly least: number;
}

/** At least one of these things, wherever `j` is chosen; without `j` always. */
export function atLeastOne(of: readonly number[], j: number | null): Row {
  const things = j === null ? of : [...of, j];
  return {
    things: Int32Array.from(things),
    factors: Float64Array.from(things, (_, i) => (i < of.length ? 1 : -1)),
    least: j === null ? 1 : 0,
  };
}
