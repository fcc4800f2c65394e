import type { Day } from '../foundation/day.ts';
import type { Standing } from './document.ts';
import type { Assessment, DueAt, EndOfAnswer } from './model.ts';

/** One end of a slim answer: no witness, no working. */
export interface LineEnd {
  readonly standing: Standing;
  readonly dueAt: DueAt;
  readonly left: EndOfAnswer['left'];
}

/**
 * An answer for one part under one action without its working: what a page of many aircraft needs.
 * `standingOn` derives the day's standing from it as from the whole answer.
 */
export interface StandingLine {
  readonly directive: string;
  readonly issue: number;
  readonly action: string;
  /** Title of the action. */
  readonly title: string;
  /** Subject of the part (or of the aircraft). */
  readonly part: string;
  readonly treatAs: LineEnd;
  readonly couldBecome: LineEnd;
  readonly soon_days: number;
  readonly alternative: { readonly reference: string; readonly expires: Day | null } | null;
  readonly lastDone: Day | null;
  /** The paper that would narrow it most; null if the papers settle it. */
  readonly hangsOn: string | null;
  /** True where it is treated as due because it could not be computed. */
  readonly notComputed: boolean;
}

const endOf = ({ standing, dueAt, left }: EndOfAnswer): LineEnd => ({ standing, dueAt, left });

/** The slim form of an answer. */
export function lineOf(a: Assessment): StandingLine {
  return {
    directive: a.directive,
    issue: a.issue,
    action: a.action.id,
    title: a.action.title,
    part: a.subject,
    treatAs: endOf(a.treatAs),
    couldBecome: endOf(a.couldBecome),
    soon_days: a.soon_days,
    alternative: a.alternative && { reference: a.alternative.reference, expires: a.alternative.expires },
    lastDone: a.lastDone?.day ?? null,
    hangsOn: a.papers[0]?.paper ?? null,
    notComputed: a.notComputed !== null,
  };
}
