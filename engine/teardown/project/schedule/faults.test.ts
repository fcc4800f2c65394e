import { expect, it } from 'vitest';
import { projectOf } from '../project-of.ts';
import { faultsOf } from './faults.ts';

const project = projectOf({ durations: [2, 3], capacities: [3], demands: [[2], [2]], successors: [[], []] });
const chained = projectOf({ durations: [2, 3], capacities: [9], demands: [[2], [2]], successors: [[1], []] });

it.each([
  [project, [0, 2], []],
  [project, [3, 0], []],
  [project, [0, 1], ['resource 1: 4 of 3 at 1']],
  [project, [0.5, 3], ['job 1 starts at 0.5']],
  [project, [-1, 3], ['job 1 starts at -1']],
  [project, [0], ['1 starts of 2 jobs']],
  [chained, [0, 2], []],
  [chained, [0, 1], ['job 2 starts before job 1 has ended']],
])('a schedule is looked through: case %#', (p, starts, faults) => expect(faultsOf(p, starts)).toEqual(faults));
