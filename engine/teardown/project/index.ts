/** Jobs, precedence, limited resources: how long does it take at least? */

export { type CriticalPath, criticalPath } from './bound/critical-path.ts';
export { type LowerBounds, lowerBounds } from './bound/lower-bounds.ts';
export { type LeastMakespan, type LeastMakespanOptions, leastMakespan } from './least-makespan.ts';
export type { ListAnswer, ListQuestion } from './lists/question.ts';
export { searchLists } from './lists/search-lists.ts';
export type { Project, ProjectInput } from './model.ts';
export { type PertJob, type PertPath, pertPath } from './pert.ts';
export { projectOf } from './project-of.ts';
export { readRcp } from './read-rcp.ts';
export { readSm } from './read-sm.ts';
export { faultsOf } from './schedule/faults.ts';
export { doubleJustified } from './schedule/justify.ts';
export { parallelSchedule } from './schedule/parallel.ts';
export { makespanOf } from './schedule/room.ts';
export { listBy, PRIORITY_RULES, type PriorityRule, priorities } from './schedule/rules.ts';
export { serialSchedule } from './schedule/serial.ts';
