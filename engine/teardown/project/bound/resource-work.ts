import type { Project } from '../model.ts';

/** All that is asked of a resource, spread over its capacity, rounded up: the most of the resources. */
export function resourceWork({ count, durations, demands, capacities }: Project): number {
  const kinds = capacities.length;
  let most = 0;
  for (let k = 0; k < kinds; k++) {
    let work = 0;
    for (let j = 0; j < count; j++) work += durations[j]! * demands[j * kinds + k]!;
    if (work > 0) most = Math.max(most, Math.ceil(work / capacities[k]!));
  }
  return most;
}
