import type { Packed } from './packed.ts';

/** What is left at every unit of time, packed. The hot form of `roomOf`. */
export interface Timeline {
  /** Earliest start at or after `from` at which the job fits for its whole time. */
  earliest(job: number, from: number): number;
  /** Latest start of a job that ends at `end` or before. */
  latest(job: number, end: number): number;
  take(job: number, start: number): void;
  /** Nothing is taken any more before `until`. */
  clear(until: number): void;
}

/** @param horizon every job ends by then */
export function timelineOf(packed: Packed, durations: Int32Array, horizon: number): Timeline {
  return packed.words === 1 ? oneWord(packed, durations, horizon) : manyWords(packed, durations, horizon);
}

/** Each unit of time is looked at once: what was seen to fit behind a clash is not looked at again. */
function oneWord(packed: Packed, durations: Int32Array, horizon: number): Timeline {
  const { demands } = packed;
  const guard = packed.guards[0]!;
  const full = packed.free[0]!;
  const free = new Int32Array(horizon + 1).fill(full);
  return {
    earliest(job, from) {
      const need = demands[job]!;
      const d = durations[job]!;
      if (need === 0) return from;
      let start = from;
      let seen = from;
      for (let t = from + d - 1; t >= seen; ) {
        if (((free[t]! - need) & guard) === guard) t--;
        else {
          seen = start + d;
          start = t + 1;
          t = start + d - 1;
        }
      }
      return start;
    },
    latest(job, end) {
      const need = demands[job]!;
      const d = durations[job]!;
      if (need === 0) return end - d;
      let last = end;
      let seen = end;
      for (let t = end - d; t < seen; ) {
        if (((free[t]! - need) & guard) === guard) t++;
        else {
          seen = last - d;
          last = t;
          t = last - d;
        }
      }
      return last - d;
    },
    take(job, start) {
      const need = demands[job]!;
      if (need === 0) return;
      for (let t = start + durations[job]! - 1; t >= start; t--) free[t]! -= need;
    },
    clear: (until) => void free.fill(full, 0, until),
  };
}

function manyWords(packed: Packed, durations: Int32Array, horizon: number): Timeline {
  const { words, demands, guards } = packed;
  const free = new Int32Array((horizon + 1) * words);
  const clear = (until: number) => {
    for (let t = 0; t < until; t++) for (let w = 0; w < words; w++) free[t * words + w] = packed.free[w]!;
  };
  clear(horizon + 1);
  const fits = (job: number, t: number): boolean => {
    for (let w = 0; w < words; w++)
      if (((free[t * words + w]! - demands[job * words + w]!) & guards[w]!) !== guards[w]!) return false;
    return true;
  };
  return {
    earliest(job, from) {
      const d = durations[job]!;
      let start = from;
      let seen = from;
      for (let t = from + d - 1; t >= seen; ) {
        if (fits(job, t)) t--;
        else {
          seen = start + d;
          start = t + 1;
          t = start + d - 1;
        }
      }
      return start;
    },
    latest(job, end) {
      const d = durations[job]!;
      let last = end;
      let seen = end;
      for (let t = end - d; t < seen; ) {
        if (fits(job, t)) t++;
        else {
          seen = last - d;
          last = t;
          t = last - d;
        }
      }
      return last - d;
    },
    take(job, start) {
      for (let t = start + durations[job]! - 1; t >= start; t--)
        for (let w = 0; w < words; w++) free[t * words + w]! -= demands[job * words + w]!;
    },
    clear,
  };
}
