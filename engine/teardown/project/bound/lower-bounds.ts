import type { Project } from '../model.ts';
import { criticalPath } from './critical-path.ts';
import { energyBound } from './energy.ts';
import { resourceWork } from './resource-work.ts';
import { stretchedPath } from './stretched.ts';

/** Lengths that no schedule is shorter than, each by its own reasoning, and the greatest of them. */
export interface LowerBounds {
  readonly criticalPath: number;
  readonly resourceWork: number;
  readonly stretched: number;
  readonly energy: number;
  readonly best: number;
}

/** @param atMost length of a schedule that is known; without one the sum of all times */
export function lowerBounds(project: Project, atMost?: number): LowerBounds {
  const { length } = criticalPath(project);
  const work = resourceWork(project);
  const stretched = stretchedPath(project);
  const simple = Math.max(length, work, stretched);
  const longest = atMost ?? project.durations.reduce((sum, d) => sum + d, 0);
  const energy = energyBound(project, simple, longest);
  return { criticalPath: length, resourceWork: work, stretched, energy, best: Math.max(simple, energy) };
}
