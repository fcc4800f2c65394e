import type { Project } from './model.ts';

/** The same project in the coarsest unit in which all its times are whole. */
export function coarser(project: Project): { readonly project: Project; readonly unit: number } {
  const unit = project.durations.reduce(divisor, 0) || 1;
  return unit === 1
    ? { project, unit }
    : { project: { ...project, durations: project.durations.map((d) => d / unit) }, unit };
}

function divisor(a: number, b: number): number {
  return b === 0 ? a : divisor(b, a % b);
}
