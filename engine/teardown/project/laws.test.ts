import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  faultsOf,
  leastMakespan,
  lowerBounds,
  makespanOf,
  PRIORITY_RULES,
  type Project,
  parallelSchedule,
  projectOf,
  searchLists,
  serialSchedule,
} from './index.ts';
import { allLists, projects } from './testing/projects.ts';

const shortest = (project: Project) => {
  let best = Number.POSITIVE_INFINITY;
  for (const list of allLists(project)) best = Math.min(best, makespanOf(project, serialSchedule(project, list)));
  return best;
};
const total = (project: Project) => project.durations.reduce((sum, d) => sum + d, 0);
const least = (project: Project, seed = 1) => leastMakespan(project, { seed, effort: 4000 });

describe('S3 the answer is a shortest schedule', () => {
  it('of all lists of tiny projects', () =>
    fc.assert(
      fc.property(projects(7), (project) => {
        const answer = least(project);
        const best = shortest(project);
        expect(faultsOf(project, answer.starts)).toEqual([]);
        expect(makespanOf(project, answer.starts)).toBe(answer.makespan);
        expect(answer).toMatchObject({ makespan: best, bound: best, proven: true });
        const bounds = lowerBounds(project);
        for (const bound of Object.values(bounds)) expect(bound).toBeLessThanOrEqual(best);
      }),
      { numRuns: 150 },
    ));
  it.each([
    // By hand: 4 and 4 share resource 2 one after the other; 3 before the one and 3 after the other fit beside them.
    {
      what: 'two jobs that exclude each other',
      input: {
        durations: [3, 4, 4, 3],
        capacities: [3, 1],
        demands: [
          [2, 0],
          [1, 1],
          [1, 1],
          [2, 0],
        ],
        successors: [[2], [3], [], []],
      },
      makespan: 8,
    },
    {
      what: 'one resource, all in a row',
      input: { durations: [2, 5, 1], capacities: [1], demands: [[1], [1], [1]], successors: [[], [], []] },
      makespan: 8,
    },
    {
      what: 'no resource at all',
      input: { durations: [2, 5, 1], capacities: [], demands: [[], [], []], successors: [[1], [], []] },
      makespan: 7,
    },
    {
      what: 'a capacity that fills a word',
      input: {
        durations: [2, 2, 2],
        capacities: [1e9, 3, 900],
        demands: [
          [6e8, 1, 1],
          [5e8, 1, 1],
          [4e8, 1, 1],
        ],
        successors: [[], [], []],
      },
      makespan: 4,
    },
    {
      what: 'hours in minutes',
      input: { durations: [120, 480, 60], capacities: [1], demands: [[1], [1], [1]], successors: [[], [], []] },
      makespan: 660,
    },
  ])('$what: $makespan', ({ input, makespan }) => {
    const project = projectOf(input);
    expect(leastMakespan(project, { seed: 3 })).toMatchObject({ makespan, proven: true });
    expect(shortest(project)).toBe(makespan);
  });
});

describe('S4 laws', () => {
  it('between the bound and the sum of all times, feasible, the same again', () =>
    fc.assert(
      fc.property(projects(14, 9), fc.integer({ min: 0, max: 99 }), (project, seed) => {
        const answer = least(project, seed);
        expect(faultsOf(project, answer.starts)).toEqual([]);
        expect(answer.bound).toBeLessThanOrEqual(answer.makespan);
        expect(answer.bound).toBeGreaterThanOrEqual(lowerBounds(project).best);
        expect(answer.makespan).toBeLessThanOrEqual(total(project));
        expect(answer.proven).toBe(answer.bound === answer.makespan);
        expect(least(project, seed)).toEqual(answer);
      }),
      { numRuns: 60 },
    ));
  it('twice the times take twice as long', () =>
    fc.assert(
      fc.property(projects(9), fc.integer({ min: 2, max: 5 }), (project, by) => {
        const long = { ...project, durations: project.durations.map((d) => d * by) };
        const mixed = projectOf({
          ...plain(long),
          durations: [...long.durations, 1],
          demands: [...plain(long).demands, project.capacities.map(() => 0)],
          successors: [...plain(long).successors, []],
        });
        expect(least(long).makespan).toBe(by * least(project).makespan);
        // A short job that needs nothing keeps the unit from being divided out.
        if (total(project) > 0) expect(least(mixed).makespan).toBe(by * least(project).makespan);
      }),
      { numRuns: 60 },
    ));
  it('more of a resource never makes it longer, nor any bound greater', () =>
    fc.assert(
      fc.property(projects(9), fc.nat(), (project, which) => {
        if (project.capacities.length === 0) return;
        const more = { ...project, capacities: project.capacities.slice() };
        more.capacities[which % more.capacities.length]! += 1;
        expect(least(more).makespan).toBeLessThanOrEqual(least(project).makespan);
        const [few, many] = [lowerBounds(project), lowerBounds(more)];
        for (const k of ['criticalPath', 'resourceWork', 'stretched', 'energy', 'best'] as const)
          expect(many[k]).toBeLessThanOrEqual(few[k]);
      }),
      { numRuns: 80 },
    ));
  it('a rule makes a schedule that is allowed and no shorter than the shortest', () =>
    fc.assert(
      fc.property(projects(7), (project) => {
        for (const rule of [...PRIORITY_RULES, 'WCS' as const]) {
          const starts = parallelSchedule(project, rule);
          expect(faultsOf(project, starts)).toEqual([]);
          expect(makespanOf(project, starts)).toBeGreaterThanOrEqual(shortest(project));
        }
      }),
      { numRuns: 40 },
    ));
});

describe('S5 effort and time', () => {
  const hard = projectOf({
    durations: Array.from({ length: 24 }, (_, j) => 1 + ((j * 7) % 9)),
    capacities: [10, 9],
    demands: Array.from({ length: 24 }, (_, j) => [1 + ((j * 5) % 7), 1 + ((j * 3) % 6)]),
    successors: Array.from({ length: 24 }, (_, j) => [j + 5, j + 7].filter((s) => s < 24)),
  });
  it('effort is not exceeded by more than a slice', () => {
    const answer = leastMakespan(hard, { seed: 1, effort: 40 });
    expect(answer.effort).toBeLessThanOrEqual(40);
    expect(faultsOf(hard, answer.starts)).toEqual([]);
  });
  it('told to stop it gives the best so far', () => {
    let asked = 0;
    const answer = leastMakespan(hard, { seed: 1, keepGoing: () => ++asked < 2 });
    expect(answer.effort).toBeLessThan(300);
    expect(faultsOf(hard, answer.starts)).toEqual([]);
  });
  it('a search over lists with a reader of another kind finds the best of all', () => {
    const project = projectOf({
      durations: [1, 1, 1, 1, 1, 1],
      capacities: [],
      demands: Array(6).fill([]),
      successors: [[3], [], [4], [], [], []],
    });
    // A figure that depends on neighbours alone: no schedule at all.
    const decode = (list: ArrayLike<number>) => {
      let sum = 0;
      for (let i = 1; i < list.length; i++) sum += (5 * list[i - 1]! + 3 * list[i]! + list[i - 1]! * list[i]!) % 11;
      return sum;
    };
    let best = Number.POSITIVE_INFINITY;
    for (const list of allLists(project)) best = Math.min(best, decode(list));
    const better: number[] = [];
    const found = searchLists({
      count: 6,
      before: project.predecessors,
      decode,
      seed: 5,
      effort: 3000,
      onBetter: (m) => better.push(m),
    });
    expect(found.makespan).toBe(best);
    expect(decode(found.list)).toBe(best);
    expect(found.effort).toBe(3000);
    expect(better).toEqual([...better].sort((a, b) => b - a));
    expect(better.at(-1)).toBe(best);
    expect(Array.from(allLists(project), String)).toContain(String(found.list));
    expect(
      searchLists({ count: 6, before: project.predecessors, decode, seed: 5, effort: 3000, bound: best }).effort,
    ).toBeLessThan(3000);
  });
});

function plain(p: Project) {
  const kinds = p.capacities.length;
  return {
    durations: p.durations,
    capacities: p.capacities,
    demands: Array.from({ length: p.count }, (_, j) => p.demands.slice(j * kinds, (j + 1) * kinds)),
    successors: p.successors,
  };
}
