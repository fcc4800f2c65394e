import type { Project } from '../model.ts';
import { becauseOf } from './because.ts';
import { type Bounds, BY_CLAUSE, BY_WAIT } from './bounds.ts';
import type { Clauses } from './clauses.ts';
import type { Waits } from './waits.ts';

/** What a contradiction teaches: a clause whose first statement follows after going back to `level`. */
export interface Lesson {
  /** Pairs of figure and value; the first follows, the second is the one that was lost last. */
  readonly literals: readonly number[];
  readonly level: number;
  /** Levels that take part: few are worth keeping. */
  readonly weight: number;
}

const NONE = -(2 ** 30);

/**
 * Follows a contradiction back along the trail until one statement of the last level is left that leads to it (the first
 * unique implication point), and makes a clause of it. The bounds are taken back on the way.
 *
 * @param noted hears of every statement that takes part
 * @see Schutt, Feydy, Stuckey and Wallace, Constraints 16 (2011) 250-282
 */
export function learner(
  project: Project,
  bounds: Bounds,
  waits: Waits,
  clauses: Clauses,
  noted: (x: number, value: number) => void,
  undone: (x: number) => void,
) {
  const asked = new Int32Array(bounds.least.length).fill(NONE);
  const because = becauseOf(project, bounds, asked);
  let figures: number[] = [];
  let here = 0;

  const ask = (x: number, value: number): void => {
    if (bounds.at[1]![x]! >= value) return;
    const old = asked[x]!;
    if (old >= value) return;
    const start = bounds.at[bounds.level]![x]!;
    if (old === NONE) figures.push(x);
    if (value > start && old <= start) here++;
    asked[x] = value;
    noted(x, value);
  };
  const explain = (x: number, value: number, reason: number): void => {
    const what = reason >> 2;
    switch (reason & 3) {
      case BY_WAIT:
        ask(waits.from[what]!, value - waits.by[what]!);
        break;
      case BY_CLAUSE:
        clauses.others(what, x, ask);
        break;
      default: {
        const j = x >> 1;
        ask(x, x & 1 ? -what : what - project.durations[j]! + 1);
        because.full(what, j, ask);
      }
    }
  };
  /** Another statement that is asked says as much. */
  const said = (x: number): boolean => {
    const into = waits.into[x]!;
    for (let i = 0; i < into.length; i++) {
      const e = into[i]!;
      if (asked[waits.from[e]!]! >= asked[x]! - waits.by[e]!) return true;
    }
    return false;
  };

  return {
    /** Null where the contradiction always holds. `crossed`: a figure without room, or -1 for a clash at `time`. */
    from(crossed: number, time: number): Lesson | null {
      figures = [];
      here = 0;
      const { least } = bounds;
      if (crossed >= 0) {
        const v = least[crossed]!;
        ask(crossed, v);
        ask(crossed ^ 1, 1 - v);
      } else because.full(time, -1, ask);
      if (here === 0) {
        const deepest = figures.reduce((l, x) => Math.max(l, bounds.levelOf(x, asked[x]!, bounds.level)), 0);
        if (deepest === 0) return clear(null);
        bounds.back(deepest, undone);
        for (const x of figures) if (asked[x]! > bounds.at[deepest]![x]!) here++;
      }
      let uip = -1;
      while (uip < 0) {
        const at = --bounds.top;
        const x = bounds.trailOf[at]!;
        least[x] = bounds.trailOld[at]!;
        undone(x);
        const value = asked[x]!;
        if (value <= least[x]!) continue;
        if (here === 1) uip = x;
        else {
          asked[x] = NONE;
          here--;
          explain(x, value, bounds.trailBecause[at]!);
        }
      }
      return clear(lessonOf(uip));
    },
  };

  function lessonOf(uip: number): Lesson {
    const literals = [uip ^ 1, 1 - asked[uip]!];
    const levels = new Set<number>();
    let level = 0;
    for (const x of new Set(figures)) {
      if (x === uip || asked[x] === NONE || said(x)) continue;
      const l = bounds.levelOf(x, asked[x]!, bounds.level - 1);
      levels.add(l);
      literals.push(x ^ 1, 1 - asked[x]!);
      if (l <= level) continue;
      level = l;
      const last = literals.length - 2;
      [literals[2], literals[last]] = [literals[last]!, literals[2]!];
      [literals[3], literals[last + 1]] = [literals[last + 1]!, literals[3]!];
    }
    return { literals, level, weight: levels.size + 1 };
  }
  function clear<T>(result: T): T {
    for (const x of figures) asked[x] = NONE;
    return result;
  }
}
