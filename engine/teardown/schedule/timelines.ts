import type { Hands } from './crew.ts';
import type { Problem } from './problem.ts';

const NEVER = Number.POSITIVE_INFINITY;
const ROOM = 64;

/**
 * When the hands of the crew are taken, in working minutes.
 *
 * `seek` finds the persons of an operation and its earliest start; `take` books them. All persons of an operation work
 * from its start to its end; a night passes over them, and so do the days off of any of them. Where days off lie in the
 * way, what ends first is taken.
 */
export class Timelines {
  start = 0;
  end = 0;
  readonly chosen: Int32Array;
  private readonly problem: Problem;
  private readonly from: Float64Array[];
  private readonly to: Float64Array[];
  private readonly used: Int32Array;
  private readonly hasOff: Uint8Array;
  /** Bookings in the order they were made: person and place. */
  private readonly log: number[] = [];
  private metOff = false;

  constructor(problem: Problem) {
    this.problem = problem;
    const crew = problem.off.length;
    this.from = problem.engaged.map((e) => new Float64Array(ROOM + e.from.length));
    this.to = problem.engaged.map((e) => new Float64Array(ROOM + e.from.length));
    this.used = new Int32Array(crew);
    this.hasOff = Uint8Array.from(problem.off, (o) => (o.from.length > 0 ? 1 : 0));
    this.chosen = new Int32Array(Math.max(1, crew));
  }

  /** Nothing booked but other work. */
  clear(): void {
    const { engaged } = this.problem;
    for (let p = 0; p < engaged.length; p++) {
      const { from, to } = engaged[p]!;
      this.from[p]!.set(from);
      this.to[p]!.set(to);
      this.used[p] = from.length;
    }
    this.log.length = 0;
  }
  /** Persons and earliest start at or after a working minute; false where ten years do not hold it. */
  seek(hands: Hands, pauses: boolean, work: number, minutes: number): boolean {
    return hands.persons === 1 && hands.must === 0
      ? this.seekOne(hands.able, pauses, work, minutes)
      : this.seekMany(hands, pauses, work, minutes);
  }
  take(persons: number): void {
    for (let k = 0; k < persons; k++) this.book(this.chosen[k]!, this.start, this.end);
  }
  get mark(): number {
    return this.log.length;
  }
  /** Takes back what was booked since the mark. */
  undo(mark: number): void {
    while (this.log.length > mark) {
      const at = this.log.pop()!;
      const p = this.log.pop()!;
      this.from[p]!.copyWithin(at, at + 1, this.used[p]!);
      this.to[p]!.copyWithin(at, at + 1, this.used[p]!);
      this.used[p]!--;
    }
  }

  private book(p: number, start: number, end: number): void {
    const n = this.used[p]!;
    if (n === this.from[p]!.length) {
      this.from[p] = grown(this.from[p]!);
      this.to[p] = grown(this.to[p]!);
    }
    const from = this.from[p]!;
    const to = this.to[p]!;
    let at = n;
    while (at > 0 && from[at - 1]! >= end) {
      from[at] = from[at - 1]!;
      to[at] = to[at - 1]!;
      at--;
    }
    from[at] = start;
    to[at] = end;
    this.used[p] = n + 1;
    this.log.push(p, at);
  }

  private seekOne(able: Int32Array, pauses: boolean, work: number, minutes: number): boolean {
    let best = NEVER;
    for (let k = 0; k < able.length; k++) {
      const p = able[k]!;
      const from = this.from[p]!;
      const to = this.to[p]!;
      const used = this.used[p]!;
      let i = used;
      while (i > 0 && to[i - 1]! > work) i--;
      let w = work;
      for (;;) {
        w = this.openFor(p, w, minutes, pauses);
        const end = w + minutes;
        if (!(end < best)) break;
        const until = this.hasOff[p] ? this.pastOff(p, w, minutes) : end;
        while (i < used && to[i]! <= w) i++;
        if (i >= used || from[i]! >= until) {
          if (until < best && until <= this.problem.calendar.whole) {
            best = until;
            this.start = w;
            this.end = until;
            this.chosen[0] = p;
          }
          break;
        }
        w = to[i]!;
      }
      if (best === work + minutes) break;
    }
    return best < NEVER;
  }
  private seekMany(hands: Hands, pauses: boolean, work: number, minutes: number): boolean {
    this.metOff = false;
    const strict = this.seekGroup(hands, pauses, work, minutes, false, NEVER);
    if (!this.metOff || !pauses || (strict && this.end === work + minutes)) return strict;
    const { start, end } = this;
    const persons = this.chosen.slice(0, hands.persons);
    const over = this.seekGroup(hands, pauses, work, minutes, true, strict ? end : NEVER);
    if (!over || (strict && end <= this.end)) {
      this.start = start;
      this.end = end;
      this.chosen.set(persons);
      return strict;
    }
    return true;
  }
  /** @param over whether days off may lie within it */
  private seekGroup(
    { able, persons, must }: Hands,
    pauses: boolean,
    work: number,
    minutes: number,
    over: boolean,
    most: number,
  ): boolean {
    const { calendar } = this.problem;
    for (let w = work; ; ) {
      if (!pauses) w = calendar.fits(w, minutes);
      if (!(w + minutes <= calendar.whole) || w + minutes >= most) return false;
      let n = 0;
      let next = NEVER;
      let missing = false;
      for (let k = 0; k < able.length; k++) {
        const free = this.freeAt(able[k]!, w, minutes, over);
        if (free <= w) this.chosen[n++] = able[k]!;
        else {
          next = Math.min(next, free);
          if (k < must) missing = true;
        }
        if (missing || (n === persons && k >= must - 1)) break;
      }
      if (!missing && n === persons) {
        const end = over ? this.pastOffOfAll(persons, w, minutes) : w + minutes;
        const clash = over ? this.clashUntil(persons, w, end) : w;
        if (clash <= w) {
          this.start = w;
          this.end = end;
          return end <= calendar.whole;
        }
        next = Math.min(next, clash);
      }
      if (next === NEVER) return false;
      w = next;
    }
  }
  /** w where the person is free from there on for so long, else when what is in the way ends. */
  private freeAt(p: number, w: number, minutes: number, over: boolean): number {
    let until = w + minutes;
    if (this.hasOff[p]) {
      const { from, to } = this.problem.off[p]!;
      for (let i = 0; i < from.length && from[i]! < until; i++) {
        if (to[i]! <= w) continue;
        this.metOff = true;
        if (!over || from[i]! <= w) return to[i]!;
        until += to[i]! - from[i]!;
      }
    }
    const i = this.firstAfter(p, w);
    return i < this.used[p]! && this.from[p]![i]! < until ? this.to[p]![i]! : w;
  }
  private firstAfter(p: number, w: number): number {
    const to = this.to[p]!;
    let i = this.used[p]!;
    while (i > 0 && to[i - 1]! > w) i--;
    return i;
  }
  /** The first minute from w on at which the person is there, and where it fits into a shift if it must. */
  private openFor(p: number, w: number, minutes: number, pauses: boolean): number {
    for (;;) {
      const before = w;
      if (!pauses) w = this.problem.calendar.fits(w, minutes);
      if (this.hasOff[p]) {
        const { from, to } = this.problem.off[p]!;
        for (let i = 0; i < from.length && from[i]! <= w; i++) if (to[i]! > w) w = to[i]!;
      }
      if (w === before || w === NEVER) return w;
    }
  }
  private pastOff(p: number, w: number, minutes: number): number {
    const { from, to } = this.problem.off[p]!;
    let end = w + minutes;
    for (let i = 0; i < from.length && from[i]! < end; i++) if (from[i]! > w) end += to[i]! - from[i]!;
    return end;
  }
  /** End where the days off of each of the chosen stop all of them. */
  private pastOffOfAll(persons: number, w: number, minutes: number): number {
    return pastOffs(this.problem, Array.from(this.chosen.slice(0, persons)), w, minutes);
  }
  private clashUntil(persons: number, w: number, end: number): number {
    let clash = w;
    for (let k = 0; k < persons; k++) {
      const p = this.chosen[k]!;
      const i = this.firstAfter(p, w);
      if (i < this.used[p]! && this.from[p]![i]! < end) clash = Math.max(clash, this.to[p]![i]!);
    }
    return clash;
  }
}

/** Where so many minutes from w on end if everybody of a crew must be there at every one of them. */
export function pastOffs({ off }: Problem, crew: readonly number[], w: number, minutes: number): number {
  let at = w;
  for (let left = minutes; left > 0; ) {
    let next = at + left;
    let jump = at;
    for (const p of crew) {
      const { from, to } = off[p]!;
      for (let i = 0; i < from.length; i++) {
        if (from[i]! <= at && to[i]! > at) jump = Math.max(jump, to[i]!);
        else if (from[i]! > at && from[i]! < next) next = from[i]!;
      }
    }
    if (jump > at) at = jump;
    else {
      left -= next - at;
      at = next;
    }
  }
  return at;
}

function grown(row: Float64Array): Float64Array {
  const wider = new Float64Array(row.length * 2);
  wider.set(row);
  return wider;
}
