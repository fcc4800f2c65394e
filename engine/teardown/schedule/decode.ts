import type { Hands } from './crew.ts';
import { JigBook } from './jig-book.ts';
import type { Problem } from './problem.ts';
import { Timelines } from './timelines.ts';

const NEVER = Number.POSITIVE_INFINITY;
/** Attempts to keep the working lives of a group; then it is planned as close as it came. */
const TRIES = 60;
/** After so many attempts a group is moved on by a day at a time. */
const SMALL_STEPS = 20;
/** Readings of one list; then booked days and checks are passed over, which nothing has been seen to need. */
const MOST_GOES = 500;
const PLACED = 0;
const HELD = 1;
const CLASH = 2;

/**
 * Makes a schedule of a list: each operation as early as what it waits for, hands and jig allow.
 *
 * How: serial schedule generation on working minutes. A jig is taken by a stay with its first operation and kept until
 * its last; an operation whose jig is held by another job is passed over and taken up again. A stay that runs into days
 * on which the jig is booked, or past its check, makes the whole list be read again with that stay begun later or in
 * another jig. A group with working lives is placed as a whole, and moved on until every life is kept.
 * Not valid for: lists in which an operation stands before one that it waits for (such a list is read in several goes).
 */
export class Decoder {
  /** Of each operation, minutes of the clock; what comes after is of the list decoded last. */
  readonly start: Float64Array;
  readonly end: Float64Array;
  /** The same in working minutes; of the clock where no hands are taken. */
  readonly from: Float64Array;
  readonly crew: Int32Array[];
  readonly stayJig: Int32Array;
  readonly stayStart: Float64Array;
  readonly stayEnd: Float64Array;
  /** 1 where every jig that fits is past its check: it is held, and not used. */
  readonly unchecked: Uint8Array;
  /** 1 where a working life of the group could not be kept. */
  readonly late: Uint8Array;
  private readonly lines: Timelines;
  private readonly jigs: JigBook;
  private readonly placed: Uint8Array;
  private readonly waits: Int32Array;
  private readonly outside: Int32Array;
  private readonly jobLeft: Int32Array;
  private readonly least: Float64Array;
  private minutes: ArrayLike<number>;
  private readonly problem: Problem;

  constructor(problem: Problem) {
    const { count, groups } = problem;
    this.problem = problem;
    this.minutes = problem.minutes;
    this.start = new Float64Array(count);
    this.end = new Float64Array(count);
    this.from = new Float64Array(count);
    this.crew = problem.hands.map((h) => new Int32Array(h.persons));
    this.jigs = new JigBook(problem);
    this.stayJig = this.jigs.jig;
    this.stayStart = this.jigs.start;
    this.stayEnd = this.jigs.end;
    this.unchecked = this.jigs.unchecked;
    this.late = new Uint8Array(groups.length);
    this.lines = new Timelines(problem);
    this.placed = new Uint8Array(count);
    this.waits = new Int32Array(count);
    this.outside = new Int32Array(groups.length);
    this.jobLeft = new Int32Array(problem.jobs);
    this.least = new Float64Array(count);
  }

  /** @returns end of the last operation, minutes of the clock; Infinity where ten years do not hold it */
  decode(
    list: ArrayLike<number>,
    minutes: ArrayLike<number> = this.problem.minutes,
    ready: ArrayLike<number> = this.problem.ready,
  ): number {
    this.minutes = minutes;
    this.jigs.forget();
    for (let goes = 0; ; goes++) {
      const end = this.read(list, ready, goes > MOST_GOES);
      if (end >= 0) return end;
      if (end === STUCK) return this.jobByJob(list, minutes, ready);
    }
  }

  /** The same with one job after the other, which no jig of another can stop. NaN where a job stops itself. */
  jobByJob(
    list: ArrayLike<number>,
    minutes: ArrayLike<number> = this.problem.minutes,
    ready: ArrayLike<number> = this.problem.ready,
  ): number {
    this.minutes = minutes;
    this.jigs.forget();
    for (let goes = 0; ; goes++) {
      const end = this.read(list, ready, goes > MOST_GOES, this.problem.turn);
      if (end >= 0) return end;
      if (end === STUCK) return Number.NaN;
    }
  }

  private read(
    list: ArrayLike<number>,
    ready: ArrayLike<number>,
    lax: boolean,
    turn: readonly number[] | null = null,
  ): number {
    this.reset(ready);
    const { count, groupOf, job } = this.problem;
    let left = count;
    let whole = 0;
    let now = 0;
    while (left > 0) {
      const before = left;
      for (let i = 0; i < list.length; i++) {
        const op = list[i]!;
        if (this.placed[op] || (turn && job[op] !== turn[now])) continue;
        const g = groupOf[op]!;
        if (g >= 0 ? this.outside[g]! > 0 : this.waits[op]! > 0) continue;
        const how = g >= 0 ? this.placeGroup(g, ready, lax) : this.place(op, ready[op]!, lax);
        if (how === HELD) continue;
        if (how === CLASH) return AGAIN;
        if (g >= 0) {
          const { members } = this.problem.groups[g]!;
          left -= members.length;
          for (let m = 0; m < members.length; m++) {
            this.release(members[m]!);
            whole = Math.max(whole, this.end[members[m]!]!);
          }
        } else {
          left--;
          this.release(op);
          if (this.end[op]! > whole) whole = this.end[op]!;
        }
        if (whole === NEVER) return NEVER;
      }
      if (turn && this.jobLeft[turn[now]!] === 0 && now < turn.length - 1) now++;
      else if (left === before) return STUCK;
    }
    return whole;
  }

  private reset(ready: ArrayLike<number>): void {
    const { before, groups } = this.problem;
    this.lines.clear();
    this.placed.fill(0);
    this.jobLeft.fill(0);
    for (let i = 0; i < before.length; i++) this.jobLeft[this.problem.job[i]!]!++;
    for (let i = 0; i < before.length; i++) this.waits[i] = before[i]!.length;
    for (let g = 0; g < groups.length; g++) this.outside[g] = groups[g]!.outside.length;
    this.late.fill(0);
    this.jigs.clear(ready);
  }
  /** What waited for it may come. */
  private release(op: number): void {
    this.placed[op] = 1;
    this.jobLeft[this.problem.job[op]!]!--;
    const { behind, groupOf, groups } = this.problem;
    const list = behind[op]!;
    for (let i = 0; i < list.length; i++) {
      const next = list[i]!;
      this.waits[next]!--;
    }
    for (let g = 0; g < groups.length; g++)
      if (groupOf[op] !== g && groups[g]!.outside.includes(op)) this.outside[g]!--;
  }

  private place(op: number, earliest: number, lax: boolean): number {
    const { before, stayOf, calendar, hands, pauses } = this.problem;
    let at = earliest;
    const needs = before[op]!;
    for (let i = 0; i < needs.length; i++) {
      const end = this.end[needs[i]!]!;
      if (end > at) at = end;
    }
    const s = stayOf[op]!;
    const opens = s >= 0 && this.stayJig[s]! < 0;
    if (opens) {
      at = this.jigs.choose(s, at);
      if (this.stayJig[s]! < 0) return HELD;
    } else if (s >= 0 && this.stayStart[s]! > at) at = this.stayStart[s]!;
    const minutes = this.minutes[op]!;
    const h = hands[op]!.checks.length > 0 ? this.independent(op) : hands[op]!;
    if (h.persons === 0 || minutes === 0) {
      this.start[op] = at;
      this.from[op] = at;
      this.end[op] = at + minutes;
      if (h.persons > 0) this.crew[op]!.fill(-1);
    } else if (this.lines.seek(h, pauses[op] === 1, calendar.toWork(at), minutes)) {
      this.lines.take(h.persons);
      const crew = this.crew[op]!;
      for (let k = 0; k < h.persons; k++) crew[k] = this.lines.chosen[k]!;
      this.from[op] = this.lines.start;
      this.start[op] = calendar.startOf(this.lines.start);
      this.end[op] = calendar.endOf(this.lines.end);
    } else {
      this.start[op] = NEVER;
      this.end[op] = NEVER;
    }
    if (s < 0) return PLACED;
    if (opens) this.jigs.open(s, this.start[op]!);
    this.jigs.reach(s, this.end[op]!);
    if (!lax && this.jigs.clashes(s)) return CLASH;
    this.jigs.leaveIfLast(s);
    return PLACED;
  }

  /** Everybody who did none of what it checks, if they are enough. */
  private independent(op: number): Hands {
    const own = this.problem.hands[op]!;
    const able = own.holders.filter((p) => !own.away.includes(p) && !own.checks.some((c) => this.crew[c]!.includes(p)));
    return able.length >= own.persons ? { ...own, able } : own;
  }

  private placeGroup(g: number, ready: ArrayLike<number>, lax: boolean): number {
    const { members, lives } = this.problem.groups[g]!;
    for (let m = 0; m < members.length; m++) this.least[members[m]!] = ready[members[m]!]!;
    const mark = this.lines.mark;
    const kept = this.jigs.copy();
    const back = () => {
      this.lines.undo(mark);
      this.jigs.restore(kept);
    };
    for (let tries = 0; ; tries++) {
      for (let m = 0; m < members.length; m++) {
        const how = this.place(members[m]!, this.least[members[m]!]!, lax);
        if (how === PLACED) continue;
        if (how === HELD) back();
        return how;
      }
      let kept_ = true;
      for (let l = 0; l < lives.length; l++) {
        const { a, b, most } = lives[l]!;
        if (this.start[b]! === NEVER || this.start[b]! - this.start[a]! <= most) continue;
        kept_ = false;
        const soonest = this.start[b]! - most;
        this.least[a] =
          tries < SMALL_STEPS ? soonest : Math.max(soonest, (Math.floor(this.start[a]! / 1440) + 1) * 1440);
      }
      if (kept_) return PLACED;
      if (tries >= TRIES) {
        this.late[g] = 1;
        return PLACED;
      }
      back();
    }
  }
}
const AGAIN = -1;
const STUCK = -2;
