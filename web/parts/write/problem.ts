import type { DraftProblem } from '../../../engine/index.ts';

/** What is wrong at a place of the document, as one sentence beside its field. */
export interface Problem {
  readonly path: string;
  readonly says: string;
  /** Nothing stands there yet. */
  readonly missing: boolean;
  /** Place in a formula, counted from 1. */
  readonly position?: number;
}

const NOTHING = /^(nothing yet|none)$/;
/** What a field may hold, where saying so helps. */
const HELPS = /^a (whole )?number$|day/;
const SIDES: Readonly<Record<string, string>> = {
  '>=': 'at least',
  '>': 'more than',
  '<=': 'at most',
  '<': 'less than',
};
/** A bound of the schema as a person would say it. */
const bound = (allowed: string): string =>
  allowed
    .replace(/^must be a short word.*$/, 'a short word that begins with a letter')
    .replace(/^Too (?:small|big): expected string to have >=1 characters$/, 'some text')
    .replace(
      /^Too (?:small|big): expected \w+ to (?:be|have) (>=|>|<=|<) ?(.+)$/,
      (_, side: string, rest: string) => `${SIDES[side]} ${rest}`,
    );

/** A complaint in its lines as the sentence beside a field; `whole`: an allowed line that says nothing more. */
export function plainProblem(p: DraftProblem, whole = ''): Problem {
  const allowed = bound(p.allowed);
  const empty = NOTHING.test(p.given);
  const emptySays =
    p.remedy === 'Choose one of these' ? 'Choose one.' : `${p.remedy}${HELPS.test(allowed) ? `: ${allowed}` : ''}.`;
  return {
    path: p.path,
    missing: empty,
    says: empty ? emptySays : `${p.given}. ${p.remedy}${allowed === whole ? '' : `: ${allowed}`}.`,
  };
}
