/** A row of a paper logbook as far as its figures were understood. Seconds of time flown; landings as they are. */
export interface Carried {
  readonly flown?: number | undefined;
  readonly total?: number | undefined;
}
export interface AddedUp {
  /** What stood before the row and what the row adds; null where no total stands before it. */
  readonly sum: number | null;
  /** What the book states less what the rows add up to; null where they agree or one of them is not there. */
  readonly slip: number | null;
}

/**
 * Adds carried totals up again, row by row. The total that the book states stands: the next row goes on from it, so
 * that a slip is told once, at its row, and the rounding of the rows never piles up.
 *
 * @param brought what was brought forward from the page before; null if nobody knows
 * @param tolerance what is no slip: the rounding of one row
 */
export function addUp(rows: readonly Carried[], brought: number | null, tolerance: number): AddedUp[] {
  let at = brought;
  return rows.map(({ flown, total }) => {
    const sum = at === null ? null : at + (flown ?? 0);
    const known = flown !== undefined && total !== undefined && sum !== null;
    const slip = known && Math.abs(total - sum) > tolerance ? total - sum : null;
    // A row that states nothing hides what it adds: only a stated total can go on from there.
    at = total ?? (flown === undefined ? at : sum);
    return { sum: total !== undefined && flown === undefined ? total : sum, slip };
  });
}
