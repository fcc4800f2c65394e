import type { Day } from '../foundation/day.ts';
import { supersedes } from './assess-all.ts';
import type { DirectiveDocument } from './document.ts';

/** What became of an adopted issue, on a day. */
export type IssueState =
  | { readonly is: 'in force' }
  | { readonly is: 'not yet effective'; readonly from: Day }
  | { readonly is: 'superseded'; readonly by: string; readonly issue: number; readonly from: Day }
  | { readonly is: 'withdrawn'; readonly from: Day };

/** Whether an issue stands on a day, and what took its place. Agrees with `inForce`. */
export function stateOf(d: DirectiveDocument, all: readonly DirectiveDocument[], day: Day): IssueState {
  if (d.withdrawnOn !== undefined && d.withdrawnOn <= day) return { is: 'withdrawn', from: d.withdrawnOn };
  const [first] = all
    .filter((n) => (n.withdrawnOn === undefined || day < n.withdrawnOn) && n.effective <= day && supersedes(n, d))
    .sort((a, b) => (a.effective < b.effective ? -1 : 1));
  if (first) return { is: 'superseded', by: first.number, issue: first.issue, from: first.effective };
  return d.effective > day ? { is: 'not yet effective', from: d.effective } : { is: 'in force' };
}
