import type { Problem } from './problem.ts';

const NEVER = Number.POSITIVE_INFINITY;

/** What a stay was before a group was tried, to be gone back to. */
interface Copy {
  readonly jig: Int32Array;
  readonly start: Float64Array;
  readonly end: Float64Array;
  readonly left: Int32Array;
  readonly held: Int32Array;
  readonly free: Float64Array;
}

/** Which stay has which jig from when to when, while a list is read; minutes of the clock. */
export class JigBook {
  /** Of each stay; -1 where it has none yet. */
  readonly jig: Int32Array;
  readonly start: Float64Array;
  readonly end: Float64Array;
  /** 1 where every jig that fits is past its check: it is held, and not used. */
  readonly unchecked: Uint8Array;
  private readonly left: Int32Array;
  private readonly heldBy: Int32Array;
  private readonly freeFrom: Float64Array;
  /** Learnt from readings of the same list that ran into booked days. */
  private readonly notBefore: Float64Array;
  private readonly problem: Problem;

  constructor(problem: Problem) {
    const { stays, jigs } = problem;
    this.problem = problem;
    this.jig = new Int32Array(stays.length);
    this.start = new Float64Array(stays.length);
    this.end = new Float64Array(stays.length);
    this.unchecked = new Uint8Array(stays.length);
    this.left = new Int32Array(stays.length);
    this.heldBy = new Int32Array(jigs.length);
    this.freeFrom = new Float64Array(jigs.length);
    this.notBefore = new Float64Array(stays.length * jigs.length);
  }

  /** For another list. */
  forget(): void {
    this.notBefore.fill(0);
    this.unchecked.fill(0);
  }
  /** For another reading of the same list: only the stays that have begun stand in a jig. */
  clear(ready: ArrayLike<number>): void {
    const { stays } = this.problem;
    this.heldBy.fill(-1);
    this.freeFrom.fill(0);
    this.jig.fill(-1);
    this.end.fill(0);
    for (let s = 0; s < stays.length; s++) this.left[s] = stays[s]!.members.length;
    for (let s = 0; s < stays.length; s++) {
      if (!stays[s]!.begun) continue;
      const at = this.choose(s, ready[stays[s]!.members[0]!]!);
      if (this.jig[s]! < 0) continue;
      this.open(s, at);
      this.end[s] = at;
    }
  }

  /** Sets the jig of a stay, and answers when it may begin; no jig where all that fit are held. */
  choose(s: number, at: number): number {
    const { stays, jigs } = this.problem;
    const { jigs: fit } = stays[s]!;
    for (;;) {
      let best = NEVER;
      let some = false;
      for (let k = 0; k < fit.length; k++) {
        const j = fit[k]!;
        if (this.heldBy[j]! >= 0) {
          some = true;
          continue;
        }
        let t = Math.max(at, this.freeFrom[j]!, this.notBefore[s * jigs.length + j]!);
        const { from, to, good } = jigs[j]!;
        for (let i = 0; i < from.length; i++) if (from[i]! <= t && to[i]! > t) t = to[i]!;
        if (!this.unchecked[s] && t >= good) continue;
        if (t < best) {
          best = t;
          this.jig[s] = j;
        }
      }
      if (best < NEVER) return best;
      this.jig[s] = -1;
      if (some || this.unchecked[s]) return at;
      this.unchecked[s] = 1;
      for (let j = 0; j < jigs.length; j++) this.notBefore[s * jigs.length + j] = 0;
    }
  }
  open(s: number, at: number): void {
    this.heldBy[this.jig[s]!] = s;
    this.start[s] = at;
  }
  reach(s: number, end: number): void {
    if (end > this.end[s]!) this.end[s] = end;
  }
  /** The stay lies in a booked span or past the check: it is to begin later, or elsewhere. */
  clashes(s: number): boolean {
    const { jigs } = this.problem;
    const j = this.jig[s]!;
    const { from, to, good } = jigs[j]!;
    const begin = this.start[s]!;
    const end = this.end[s]!;
    if (end === NEVER) return false;
    if (!this.unchecked[s] && end > good) {
      this.notBefore[s * jigs.length + j] = NEVER;
      return true;
    }
    for (let i = 0; i < from.length; i++)
      if (from[i]! < end && to[i]! > begin) {
        this.notBefore[s * jigs.length + j] = to[i]!;
        return true;
      }
    return false;
  }
  /** One operation of it is placed: with the last the jig is free. */
  leaveIfLast(s: number): void {
    if (--this.left[s]! > 0) return;
    const j = this.jig[s]!;
    this.heldBy[j] = -1;
    this.freeFrom[j] = this.end[s]!;
  }

  copy(): Copy {
    return {
      jig: this.jig.slice(),
      start: this.start.slice(),
      end: this.end.slice(),
      left: this.left.slice(),
      held: this.heldBy.slice(),
      free: this.freeFrom.slice(),
    };
  }
  restore({ jig, start, end, left, held, free }: Copy): void {
    this.jig.set(jig);
    this.start.set(start);
    this.end.set(end);
    this.left.set(left);
    this.heldBy.set(held);
    this.freeFrom.set(free);
  }
}
