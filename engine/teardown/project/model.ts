/**
 * Jobs that take time and shares of limited resources, some after others. Times are whole units (a file's own, or
 * minutes). Jobs count from 0; a source and a sink are jobs like others and may be absent.
 */
export interface Project {
  readonly count: number;
  /** Time of each job, whole units. */
  readonly durations: Int32Array;
  /** What there is of each resource at any time. */
  readonly capacities: Int32Array;
  /** What job j takes of resource k while it is done: `demands[j * capacities.length + k]`. */
  readonly demands: Int32Array;
  readonly successors: readonly Int32Array[];
  readonly predecessors: readonly Int32Array[];
  /** Every job after all that it waits for. */
  readonly order: Int32Array;
}

/** What is given to make one. */
export interface ProjectInput {
  readonly durations: ArrayLike<number>;
  readonly capacities: ArrayLike<number>;
  /** Per job what it takes of each resource. */
  readonly demands: readonly ArrayLike<number>[];
  /** Per job the jobs that wait for it. */
  readonly successors: readonly ArrayLike<number>[];
}
