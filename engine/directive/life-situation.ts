import { hoursFromSeconds, parseHours } from '../foundation/convert.ts';
import type { Day } from '../foundation/day.ts';
import { type EntryOf, kitsNow, type Life, type RecordModel, type Thing } from '../record/index.ts';
import type { Candidate } from './affected.ts';
import { revocationsFor } from './approvals.ts';
import type { Action, DirectiveDocument } from './document.ts';
import { byMoment, doneUnder, entriesOf, happening, startedBy } from './history.ts';
import { conditionNow } from './limit.ts';
import type { Mix } from './model.ts';
import { formsOf, type Situation } from './situation.ts';
import { vocabularyOf } from './vocabulary.ts';

export interface Setting {
  readonly directive: DirectiveDocument;
  readonly action: Action;
  readonly life: Life;
  readonly model: RecordModel;
  readonly day: Day;
  readonly mix: Mix;
}

/** An approved alternative in force for this part or its aircraft on the day; revocation and expiry end it. */
export function alternativeOf(at: Setting): EntryOf<'alternative'> | null {
  const own = [at.life.subject.id, at.life.subject.aircraft];
  const revoked = new Set(
    revocationsFor(at.model, at.life.subject.id)
      .filter((r) => r.day <= at.day)
      .map((r) => r.body.reference),
  );
  const mine = entriesOf(at.model, own, 'alternative').filter(
    ({ body: b, day }) =>
      b.directive === at.directive.number &&
      b.action === at.action.id &&
      day <= at.day &&
      !revoked.has(b.reference) &&
      (b.expires === undefined || b.expires >= at.day),
  );
  return mine.at(-1) ?? null;
}

/** A life of the record as a situation: the facts of the part and of its carrier over one region. */
export function situationOf(at: Setting): Situation {
  const { directive: d, action, life, model, day } = at;
  const thing = life.subject;
  const cause = startedBy(d, action, model, thing.id);
  const point = (p: { day: Day; entry?: string }) => ({
    day: p.day,
    key: p.day,
    ...(p.entry ? { entry: p.entry } : {}),
  });
  // What was done before the finding that started it again does not count for that finding.
  const last = doneUnder(d, action, model, thing.id).findLast(
    (e) => e.day <= day && (!cause || byMoment(cause, e) <= 0),
  );
  const extension = alternativeOf(at)?.body.extends_by_h;
  const start = cause ? point({ day: cause.day, entry: cause.id }) : point({ day: d.effective });
  const dayOf = (key: string) => (key === 'now' || key > day ? day : (key as Day));
  return {
    directive: d,
    action,
    vocabulary: vocabularyOf(d.cases),
    day,
    region: life.region,
    facts: (key, whose) =>
      whose === 'part' ? life.at(dayOf(key)) : (life.carrierAt(dayOf(key), day) ?? life.at(dayOf(key))),
    point: (o) => {
      const h = happening(o, { d, model, thing });
      return h === null || h === 'new' ? h : point(h);
    },
    built: thing.built,
    mix: at.mix,
    policy: life.policy,
    extends_h: extension === undefined ? 0 : hoursFromSeconds(parseHours(extension)),
    start,
    done: last ? { day: last.day, key: last.day, entry: last.id } : null,
  };
}

const attribute = (t: Thing | undefined, name: string): string | undefined => t?.attributes[name]?.value;

/** What the papers say of a part when a group is asked; an aircraft's model and serial count for its parts. */
export function candidateOf(at: Setting, s: Situation): Candidate {
  const thing = at.life.subject;
  const carrier = thing.kind === 'aircraft' ? thing : thing.aircraft ? at.model.things.get(thing.aircraft) : undefined;
  return {
    model: attribute(carrier, 'model'),
    serial: attribute(carrier, 'serial'),
    built: carrier?.built ?? undefined,
    partNumber: attribute(thing, 'part_number'),
    kits: kitsNow(at.model, thing.id),
    region: at.life.region,
    facts: at.life.at(at.day),
    conditionOf: (source) => conditionNow(s, source),
    forms: formsOf(s),
  };
}
