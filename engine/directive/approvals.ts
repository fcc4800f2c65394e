import { addDays, type Day } from '../foundation/day.ts';
import type { EntryOf, Finding, RecordModel } from '../record/index.ts';
import { byMoment } from './accomplished.ts';
import { entriesOf } from './history.ts';
import type { Assessment } from './model.ts';

/** What an approval is on a day; only one in force counts. */
export type ApprovalState = 'in force' | 'not yet in force' | 'expired' | 'revoked';
interface Approval {
  readonly reference: string;
  readonly conditions: string;
  readonly from: Day;
  /** Last day on which it holds; null: it bears none. */
  readonly expires: Day | null;
  readonly entry: string;
  readonly state: ApprovalState;
  readonly revoked: { readonly on: Day; readonly because: string | null; readonly entry: string } | null;
}
/** An approved alternative means, for one subject. */
export interface Alternative extends Approval {
  readonly subject: string;
  readonly directive: string;
  readonly action: string;
  readonly endsAction: boolean;
  readonly extends_h: number | string | null;
}
/** A permit to ferry an aircraft. It changes no standing. */
export interface Permit extends Approval {
  readonly issuedBy: string;
  readonly directive: string | null;
}

type Approving = EntryOf<'alternative'> | EntryOf<'permit'>;
/** Revocations that reach a subject: its own, its aircraft's, the shop's. */
export function revocationsFor(model: RecordModel, subject: string): EntryOf<'revocation'>[] {
  return entriesOf(model, [subject, model.things.get(subject)?.aircraft ?? null, 'shop'], 'revocation');
}
function stateOf(e: Approving, model: RecordModel, day: Day): Approval {
  const from = e.kind === 'permit' && e.body.from !== undefined && e.body.from > e.day ? e.body.from : e.day;
  const expires = (e.body.expires as Day | undefined) ?? null;
  const revoked = revocationsFor(model, e.subject).find((r) => r.day <= day && r.body.reference === e.body.reference);
  const state = revoked
    ? 'revoked'
    : from > day
      ? 'not yet in force'
      : expires !== null && expires < day
        ? 'expired'
        : 'in force';
  return {
    reference: e.body.reference,
    conditions: e.body.conditions,
    from,
    expires,
    entry: e.id,
    state,
    revoked: revoked ? { on: revoked.day, because: revoked.body.because ?? null, entry: revoked.id } : null,
  };
}

/** Every approved alternative of a record with its state on a day, oldest first; revoked and expired ones stay to be read. */
export function alternativesOf(model: RecordModel, day: Day): Alternative[] {
  return model.entries
    .filter((e): e is EntryOf<'alternative'> => e.kind === 'alternative')
    .sort(byMoment)
    .map((e) => ({
      ...stateOf(e, model, day),
      subject: e.subject,
      directive: e.body.directive,
      action: e.body.action,
      endsAction: e.body.ends_action === true,
      extends_h: e.body.extends_by_h ?? null,
    }));
}
/** Ferry permits of one aircraft with their state on a day, oldest first. */
export function permitsOf(model: RecordModel, aircraft: string, day: Day): Permit[] {
  return entriesOf(model, [aircraft], 'permit').map((e) => ({
    ...stateOf(e, model, day),
    issuedBy: e.body.issued_by,
    directive: e.body.directive ?? null,
  }));
}

/** Alternatives on which an answer rests and which run out while the shop calls that soon: what they held off comes back then. */
export function lapsingSoon(assessments: readonly Assessment[], day: Day): Finding[] {
  const found = assessments.flatMap(({ alternative: a, soon_days, directive }) =>
    a?.expires && a.expires <= addDays(day, soon_days)
      ? [
          {
            code: 'directive.alternative-lapses-soon',
            text: `The alternative ${a.reference} to ${directive} holds until ${a.expires}. After that day the directive stands as if it had never been.`,
            entries: [a.entry],
            remedy: 'Ask for its extension, or book the work before that day',
          },
        ]
      : [],
  );
  return [...new Map(found.map((f) => [f.text, f])).values()];
}
