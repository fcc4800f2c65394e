import { addDays, type Day } from '../foundation/day.ts';
import { aboardOf, type EntryOf, entriesAbout, kitSince, type RecordModel, type Thing } from '../record/index.ts';
import { type Accomplished, byMoment } from './accomplished.ts';
import type { Action, DirectiveDocument, Limit, Origin } from './document.ts';
import { mixFrom } from './mix.ts';
import { limitsOf } from './read.ts';
import { readingsOf } from './sides.ts';

export { byMoment };

/** The part's own entries of one kind, oldest first. */
export function entriesOf<K extends RecordModel['entries'][number]['kind']>(
  model: RecordModel,
  subjects: readonly (string | null)[],
  kind: K,
): EntryOf<K>[] {
  return model.entries.filter((e) => e.kind === kind && subjects.includes(e.subject)).sort(byMoment) as EntryOf<K>[];
}

/** What was done under an action, earlier work that counts included, oldest first. */
export function doneUnder(d: DirectiveDocument, action: Action, model: RecordModel, subject: string): Accomplished[] {
  return entriesOf(model, [subject], 'accomplished').filter(
    ({ body: b, day }) =>
      (b.directive === d.number && b.issue === d.issue && b.action === action.id) ||
      (action.credit ?? []).some(
        (c) =>
          c.directive === b.directive && c.action === b.action && (c.not_before === undefined || day >= c.not_before),
      ),
  );
}

/**
 * Findings of an action that concern a thing: its own; those written down on whatever carried it then, for no paper
 * says which part was meant; and where the action looks at another kind of thing, those of the same aircraft and side.
 */
function findingsFor(
  d: DirectiveDocument,
  wanted: { action: string; finding: string },
  model: RecordModel,
  subject: string,
): Accomplished[] {
  const cause = d.actions.find((a) => a.id === wanted.action);
  const thing = model.things.get(subject);
  if (!cause || !thing) return [];
  const others = [...model.things.values()].filter((t) => t.id !== subject && !opposite(t, thing));
  return [thing, ...others]
    .flatMap((t) =>
      doneUnder(d, cause, model, t.id).filter((e) => {
        if (e.body.finding !== wanted.finding) return false;
        if (t.id === subject) return true;
        const here = aboardOf(model, subject, e);
        if (here.includes(t.id)) return true;
        return cause.looks_at !== thing.what && aboardOf(model, t.id, e).some((id) => here.includes(id));
      }),
    )
    .sort(byMoment);
}
const opposite = (a: Thing, b: Thing): boolean => a.hand !== 'none' && b.hand !== 'none' && a.hand !== b.hand;

/** The finding that started an action: the first one after it was last done. */
export function startedBy(
  d: DirectiveDocument,
  action: Action,
  model: RecordModel,
  subject: string,
): Accomplished | null {
  const causes = (action.started_by ?? []).flatMap((s) => findingsFor(d, s, model, subject));
  const done = doneUnder(d, action, model, subject).at(-1);
  return causes.sort(byMoment).find((c) => !done || byMoment(c, done) > 0) ?? causes.at(-1) ?? null;
}

/** The moment a limit counts from, where it is a happening of the record. */
export function happening(
  origin: Origin,
  at: { d: DirectiveDocument; model: RecordModel; thing: Thing },
): { day: Day; entry?: string } | 'new' | null {
  const { d, model, thing } = at;
  if (origin === 'new') return 'new';
  if (origin === 'effective') return { day: d.effective };
  const last = (e: { day: Day; id: string } | undefined) => (e ? { day: e.day, entry: e.id } : null);
  // A part that comes out and goes in again lives on: its clock began when it was first fitted.
  if (origin === 'part_fitted') return last(entriesOf(model, [thing.id], 'fitment')[0]);
  if ('effective_of' in origin) return { day: origin.effective_of.on };
  if ('last_look' in origin)
    return last(
      entriesOf(model, [thing.id], 'accomplished').findLast((e) =>
        origin.last_look.some((l) => l.directive === e.body.directive && l.action === e.body.action),
      ),
    );
  if ('kit_fitted' in origin) {
    const { kit_fitted: kit } = origin;
    const since = kitSince(model, thing.id, kit).at(-1) ?? null;
    return (
      last(entriesAbout(model, thing.id, 'kit').findLast((e) => e.body.kit === kit && e.body.action === 'fitted')) ??
      since
    );
  }
  if ('event' in origin)
    return last(entriesAbout(model, thing.id, 'event').findLast((e) => e.body.event === origin.event));
  return last(findingsFor(d, origin.finding, model, thing.id)[0]);
}

/** The last days before the carrier's use changes, newest first: shares that a book states hold from the next day on. */
const usesChange = (model: RecordModel, aircraft: string | null): Day[] =>
  model.entries
    .flatMap((e) => (e.kind === 'use' && e.subject === aircraft ? [addDays(e.body.from, -1)] : []))
    .sort()
    .reverse()
    .slice(0, 6);

/** The days a directive counts from for one part: what `lifeOf` is asked to cut at. */
export function cutsOf(d: DirectiveDocument, model: RecordModel, subject: string): Day[] {
  const thing = model.things.get(subject);
  const days = new Set<Day>([d.effective, mixFrom(model.day)]);
  if (!thing) return [...days];
  for (const day of usesChange(model, thing.aircraft)) days.add(day);
  const origin = (l: Limit) => ('since' in l && l.since !== undefined ? [l.since] : []);
  for (const read of readingsOf(d, model))
    for (const a of d.actions) {
      for (const o of limitsOf(a).flatMap(origin)) {
        const h = happening(o, { d, model: read, thing });
        if (h && h !== 'new') days.add(h.day);
      }
      const start = startedBy(d, a, read, subject);
      if (start) days.add(start.day);
      for (const e of doneUnder(d, a, read, subject)) days.add(e.day);
    }
  return [...days].filter((x) => x <= model.day).sort();
}
