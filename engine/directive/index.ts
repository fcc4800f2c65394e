/** What does a rule ask of it, and since when? */
export { type CaseResult, runCases } from './cases.ts';
export { affected, type Candidate, type Verdict } from './affected.ts';
export * from './document.ts';
export * from './model.ts';
export { readDirective } from './read.ts';
