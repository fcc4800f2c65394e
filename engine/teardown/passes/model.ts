/** What the teardown opens, as it comes off: what the passes put together again. Ids. */
export interface Opened {
  /** Parts, in the order in which they come off. */
  readonly off: readonly string[];
  /** Joins, in the order in which they are opened. */
  readonly open: readonly string[];
  /** Parts of `off` for which a new one goes in. */
  readonly replaced: readonly string[];
  readonly repaired?: readonly string[];
  /** Supports that stand when the reassembly begins. */
  readonly supports?: readonly string[];
  /** Looks and jobs on the plan: what hides them waits for them. */
  readonly looks?: readonly string[];
  readonly jobs?: readonly string[];
}
