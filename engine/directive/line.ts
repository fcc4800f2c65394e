import type { Day } from '../foundation/day.ts';
import type { Outlook, Percentiles } from '../outlook/index.ts';
import type { Standing } from './document.ts';
import type { Assessment, DueAt, EndOfAnswer } from './model.ts';

/** One end of a slim answer: no witness, no working. */
export interface LineEnd {
  readonly standing: Standing;
  readonly dueAt: DueAt;
  readonly left: EndOfAnswer['left'];
}

/** When it bites, on both ends, as forecast on a day. */
interface LineDates {
  readonly asOf: Day;
  readonly treatAs: Percentiles;
  readonly couldBecome: Percentiles;
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
  /** Null where nothing tells when: no reading, or no limit that flying or the calendar uses up. */
  readonly dates: LineDates | null;
}

const endOf = ({ standing, dueAt, left }: EndOfAnswer): LineEnd => ({ standing, dueAt, left });

/** The slim form of an answer, with its dates where an outlook was made. */
export function lineOf(a: Assessment, o: Pick<Outlook, 'treatAs' | 'couldBecome'> | null = null): StandingLine {
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
    dates: o && { asOf: a.day, treatAs: o.treatAs, couldBecome: o.couldBecome },
  };
}
