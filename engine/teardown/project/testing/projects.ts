import fc from 'fast-check';
import type { Project, ProjectInput } from '../model.ts';
import { projectOf } from '../project-of.ts';

/** Random projects: jobs wait only for jobs of lower number, so there is no ring. */
export function projects(most: number, longest = 6): fc.Arbitrary<Project> {
  return inputs(most, longest).map(projectOf);
}
export function inputs(most: number, longest = 6): fc.Arbitrary<ProjectInput> {
  return fc
    .record({
      count: fc.integer({ min: 1, max: most }),
      capacities: fc.array(fc.integer({ min: 1, max: 5 }), { maxLength: 3 }),
    })
    .chain(({ count, capacities }) =>
      fc.record({
        durations: fc.array(fc.integer({ min: 0, max: longest }), { minLength: count, maxLength: count }),
        capacities: fc.constant(capacities),
        demands: fc.array(fc.tuple(...capacities.map((c) => fc.integer({ min: 0, max: c }))), {
          minLength: count,
          maxLength: count,
        }),
        successors: fc.tuple(
          ...Array.from({ length: count }, (_, j) =>
            fc
              .array(fc.integer({ min: j + 1, max: Math.max(j + 1, count - 1) }), { maxLength: 2 })
              .map((l) => l.filter((s) => s < count)),
          ),
        ),
      }),
    );
}

/** Every list that keeps the precedence. */
export function* allLists(project: Project): Generator<number[]> {
  const open = project.predecessors.map((p) => p.length);
  const list: number[] = [];
  function* extend(): Generator<number[]> {
    if (list.length === project.count) yield list;
    for (let j = 0; j < project.count; j++) {
      if (open[j] !== 0) continue;
      open[j] = -1;
      list.push(j);
      for (const s of project.successors[j]!) open[s]!--;
      yield* extend();
      for (const s of project.successors[j]!) open[s]!++;
      list.pop();
      open[j] = 0;
    }
  }
  yield* extend();
}
