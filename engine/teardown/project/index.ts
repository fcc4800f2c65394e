/** Jobs, precedence, limited resources: how long does it take at least? */
export type { ListAnswer, ListQuestion } from './lists/search-lists.ts';
export { searchLists } from './lists/search-lists.ts';
export type { Project, ProjectInput } from './model.ts';
export { projectOf } from './project-of.ts';
export { readRcp } from './read-rcp.ts';
export { readSm } from './read-sm.ts';
