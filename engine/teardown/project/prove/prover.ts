import type { Project } from '../model.ts';
import { Bounds, BY_CLAUSE, BY_WAIT, CHOSEN } from './bounds.ts';
import { Clauses } from './clauses.ts';
import { learner } from './learn.ts';
import { Profile } from './profile.ts';
import { waitsOf } from './waits.ts';
import { weights } from './weights.ts';

/** A search that proves: it ends with a shortest schedule, given time. It can be taken up again. */
export interface Prover {
  /** Works for so many steps (jobs looked at); stops early where it is proven, or told to. */
  run(steps: number, keepGoing?: () => boolean): void;
  /** Schedules must be shorter than this one from now on. */
  improve(starts: ArrayLike<number>, makespan: number): void;
  /** No schedule is shorter. */
  readonly bound: number;
  readonly proven: boolean;
  /** The shortest schedule known. */
  readonly starts: Int32Array;
  readonly makespan: number;
  readonly steps: number;
  readonly conflicts: number;
}

/**
 * Earliest and latest starts, moved by waits and by the time-table, halved by choice, and a clause learned from every
 * contradiction (lazy clause generation); restarts, the choice by what took part in contradictions lately.
 *
 * It first asks for the bound itself, then for one more: so the bound rises, and the first schedule found is a shortest.
 *
 * @param starts a schedule to begin with, `makespan` its end
 * @param bound no schedule is shorter
 * @see Schutt, Feydy, Stuckey and Wallace, Constraints 16 (2011) 250-282
 */
export function prover(project: Project, starts: ArrayLike<number>, makespan: number, bound: number): Prover {
  const { count, durations } = project;
  const end = 2 * count;
  const waits = waitsOf(project);
  const least = new Int32Array(2 * count + 2);
  for (let x = 1; x < least.length; x += 2) least[x] = -(makespan - 1);
  least[end] = bound;
  const bounds = new Bounds(least, (2 * count + 2) * (makespan + 2));
  const profile = new Profile(project, bounds, makespan);
  const clauses = new Clauses(bounds);
  const best = Int32Array.from(starts);
  const weigh = weights(count, makespan, best);
  const stale = new Uint8Array(count + 1);
  const undo = (x: number) => {
    stale[x >> 1] = 1;
  };
  const { from: lessonFrom } = learner(project, bounds, waits, clauses, weigh.noted, undo);
  let head = 0;
  let crossed = -1;
  let proven = false;
  let conflicts = 0;
  let shortest = makespan;
  /** Contradictions since the last restart, and how many there may be. */
  let since = 0;
  let patience = 100;
  let keep = 4000;

  const raise = (x: number, value: number, because: number): boolean => {
    if (bounds.raise(x, value, because)) return true;
    crossed = x;
    return false;
  };
  const spread = (): boolean => {
    for (; head < bounds.top; head++) {
      const x = bounds.trailOf[head]!;
      stale[x >> 1] = 1;
      for (let e = waits.at[x]!; e < waits.at[x + 1]!; e++)
        if (!raise(waits.to[e]!, bounds.least[x]! + waits.by[e]!, e * 4 + BY_WAIT)) return false;
      if (!clauses.lost(x)) {
        crossed = bounds.trailOf[bounds.top - 1]!;
        return false;
      }
    }
    return true;
  };
  /** False on a contradiction: `crossed` is its figure, or -1 for a clash of the time-table. */
  const propagate = (): boolean => {
    crossed = -1;
    for (;;) {
      if (!spread()) return false;
      let grew = false;
      let moved = false;
      for (let j = 0; j < count; j++) {
        if (!stale[j]) continue;
        const result = profile.sync(j);
        if (result < 0) return false;
        if (result > 0) grew = true;
        stale[j] = 0;
        moved = true;
        if (result === 0) stale[j] = 2;
      }
      if (!moved) return true;
      for (let j = 0; j < count; j++)
        if (grew || stale[j] === 2) {
          stale[j] = 0;
          if (!profile.filter(j)) {
            crossed = bounds.trailOf[bounds.top - 1]!;
            return false;
          }
        }
      if (head === bounds.top) return true;
    }
  };
  const backTo = (level: number) => {
    bounds.back(level, undo);
    head = bounds.top;
    for (let j = 0; j < count; j++)
      if (stale[j]) {
        profile.sync(j);
        stale[j] = 0;
      }
    stale[count] = 0;
  };
  const conclude = (): void => {
    proven = true;
  };
  /** What always holds, at level 0. */
  const settle = (): boolean => {
    if (!propagate()) {
      conclude();
      return false;
    }
    bounds.settle();
    head = 0;
    return true;
  };
  const shorter = (by: ArrayLike<number>, value: number): void => {
    backTo(0);
    if (value < shortest) {
      shortest = value;
      best.set(by);
    }
    if (!raise(end + 1, 1 - shortest, CHOSEN)) conclude();
    else settle();
  };
  const learn = (): void => {
    conflicts++;
    const lesson = bounds.level > 0 ? lessonFrom(crossed, profile.clash) : null;
    if (!lesson) {
      conclude();
      return;
    }
    weigh.fade();
    backTo(lesson.level);
    const [x, v] = [lesson.literals[0]!, lesson.literals[1]!];
    if (lesson.literals.length === 2) {
      if (!raise(x, v, CHOSEN)) conclude();
      else settle();
    } else raise(x, v, clauses.add(lesson.literals, lesson.weight) * 4 + BY_CLAUSE);
  };
  const choose = (): boolean => {
    if (bounds.level === 0 && bounds.least[end]! < -bounds.least[end + 1]!) {
      bounds.deeper();
      return raise(end + 1, -bounds.least[end]!, CHOSEN);
    }
    const literal = weigh.next(bounds.least);
    if (!literal) return false;
    bounds.deeper();
    return raise(literal.x, literal.value, CHOSEN);
  };

  stale.fill(1, 0, count);
  for (let e = 0; e < waits.to.length && !proven; e++)
    if (!raise(waits.to[e]!, least[waits.from[e]!]! + waits.by[e]!, CHOSEN)) conclude();
  if (!proven) settle();
  return {
    run(steps, keepGoing) {
      const until = profile.steps + steps;
      while (!proven && profile.steps < until) {
        if (!propagate()) {
          learn();
          if (++since % 64 === 0 && keepGoing && !keepGoing()) break;
          if (since < patience) continue;
          since = 0;
          patience = Math.min(patience * 1.2, 2000);
          if (proven) break;
          backTo(0);
          if (clauses.count > keep) {
            clauses.forget();
            keep += 500;
          }
        } else if (!choose()) {
          const found = new Int32Array(count);
          for (let j = 0; j < count; j++) found[j] = bounds.least[2 * j]!;
          shorter(
            found,
            found.reduce((last, s, j) => Math.max(last, s + durations[j]!), 0),
          );
        }
      }
      if (!proven) backTo(0);
    },
    improve: shorter,
    get bound() {
      return proven ? shortest : bounds.at[1]![end]!;
    },
    get proven() {
      return proven;
    },
    starts: best,
    get makespan() {
      return shortest;
    },
    get steps() {
      return profile.steps;
    },
    get conflicts() {
      return conflicts;
    },
  };
}
