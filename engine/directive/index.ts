/** What does a rule ask of it, and since when? */

export type { DraftProblem } from '../foundation/draft-problem.ts';
export { affected, type Candidate, type Verdict } from './affected.ts';
export { answerDirective, type DirectiveAnswer, zDirectiveQuestion } from './answer.ts';
export {
  type Alternative,
  type ApprovalState,
  alternativesOf,
  lapsingSoon,
  type Permit,
  permitsOf,
} from './approvals.ts';
export { assess } from './assess.ts';
export {
  assessAll,
  assessing,
  type HeldAnswer,
  inForce,
  type PartAbsent,
  partsAbsent,
  standingOn,
} from './assess-all.ts';
export { type CaseResult, runCases } from './cases.ts';
export { CHANGES, type Change, changeOf } from './change.ts';
export { checkDraft, type DraftChecked } from './check.ts';
export {
  type Compliance,
  type ComplianceLine,
  complianceOf,
  type DoneLine,
  type PastLine,
  type ReadingThen,
} from './compliance.ts';
export { diffOf, type FieldChange } from './diff.ts';
export * from './document.ts';
export { type FactName, factNames, type KnownWords } from './fact-names.ts';
export { cutsOf } from './history.ts';
export { type LimitInHours, limitsInHours, type PartUnder, shortestLimits } from './limits-in-hours.ts';
export { type LineEnd, lineOf, type StandingLine } from './line.ts';
export { mixAllIn, mixOf } from './mix.ts';
export * from './model.ts';
export { readDirective } from './read.ts';
export { type ReadBack, readBack } from './read-back.ts';
export { sideFindings } from './sides.ts';
export { type IssueState, stateOf } from './state.ts';
export * from './swift/index.ts';
export {
  type Formula,
  type FormulaKind,
  type FormulaProblem,
  type FormulaValue,
  formulaValue,
  problemOr,
  readFormula,
} from './value.ts';
