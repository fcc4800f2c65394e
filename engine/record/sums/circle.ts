import type { Day } from '../../foundation/day.ts';
import type { Entry, EntryOf } from '../document.ts';
import { inRecordOrder } from '../order.ts';
import { bearsNumber, SIDE_WORDS, wordsOf } from '../side-words.ts';
import type { Done, SummedThing } from './model.ts';
import { NotPlain } from './not-plain.ts';

/** Entries that leave the figures of a life alone, or are read here. Every other kind needs the whole way. */
const READ_HERE: ReadonlySet<string> = new Set([
  'aircraft',
  'part',
  'attribute',
  'fitment',
  'meter',
  'reading',
  'flights',
  'use',
  'gap',
  'inspection',
  'ruling',
  'repair',
  'accomplished',
  'seen',
  'list_checked',
]);
const ON_AIRCRAFT_ONLY: ReadonlySet<string> = new Set(['meter', 'reading', 'flights', 'use', 'gap']);

export interface Circle {
  readonly opening: EntryOf<'aircraft'>;
  /** Entries of the aircraft, in the order of the record. */
  readonly own: readonly Entry[];
  /** Totals that inspections and actions state, of the aircraft and of what sits in it. */
  readonly stating: readonly (EntryOf<'inspection'> | EntryOf<'accomplished'>)[];
  readonly things: readonly SummedThing[];
  readonly named: Readonly<Record<string, string>>;
  readonly newest: Day;
}

/**
 * The entries of an aircraft and of all that ever sat in it, sorted out: every part was fitted on the day the
 * aircraft was built and never left its place. @throws NotPlain
 */
export function circleOf(entries: readonly Entry[], aircraft: string): Circle {
  const bySubject = new Map<string, Entry[]>();
  let newest = '1900-01-01' as Day;
  for (const e of entries) {
    if (!READ_HERE.has(e.kind)) throw new NotPlain(`an entry of kind ${e.kind}`);
    if (e.subject !== aircraft && ON_AIRCRAFT_ONLY.has(e.kind)) throw new NotPlain(`${e.kind} of a part`);
    if (e.day > newest) newest = e.day;
    const list = bySubject.get(e.subject);
    if (list) list.push(e);
    else bySubject.set(e.subject, [e]);
  }
  const own = inRecordOrder(bySubject.get(aircraft) ?? []);
  const opening = own.find((e): e is EntryOf<'aircraft'> => e.kind === 'aircraft');
  if (!opening || own.filter((e) => e.kind === 'aircraft').length > 1) throw new NotPlain('not opened once');
  const { built } = opening.body;
  if (own.some((e) => e.day < built)) throw new NotPlain('an entry before it was built');
  const things: SummedThing[] = [thingOf(aircraft, own, 'aircraft', built as Day, null)];
  for (const [id, list] of bySubject)
    if (id !== aircraft && list.some((e) => e.kind === 'part')) things.push(partOf(id, list, bySubject, opening));
  for (const [id, list] of bySubject)
    if (!things.some((t) => t.id === id) && list.some((e) => e.kind !== 'ruling'))
      throw new NotPlain('an entry of what nothing opens');
  if (entries.some((e) => e.kind === 'accomplished' && e.body.landings !== undefined))
    throw new NotPlain('work that states landings');
  if (entries.some((e) => e.kind === 'accomplished' && tellsOfSide(e, entries)))
    throw new NotPlain('work that tells of a side');
  const stating: Circle['stating'][number][] = [];
  for (const list of bySubject.values())
    for (const e of list)
      if ((e.kind === 'inspection' || e.kind === 'accomplished') && e.body.total_h !== undefined) stating.push(e);
  stating.sort((a, b) => (a.day < b.day ? -1 : a.day > b.day ? 1 : a.order - b.order));
  return { opening, own, stating, things, named: attributesOf(own), newest };
}

/** Words, a line of the paper or a number that may say which side was worked on: another room weighs them. */
function tellsOfSide(e: EntryOf<'accomplished'>, entries: readonly Entry[]): boolean {
  const words = wordsOf(e);
  if (e.body.paper_names || e.paper?.row !== undefined) return true;
  if (SIDE_WORDS.left.test(words) || SIDE_WORDS.right.test(words)) return true;
  return entries.some(
    (p) =>
      (p.kind === 'part' && [p.body.stamp, p.body.serial].some((n) => bearsNumber(words, n))) ||
      ((p.kind === 'attribute' || p.kind === 'seen') && bearsNumber(words, p.body.value)),
  );
}

function partOf(
  id: string,
  list: readonly Entry[],
  bySubject: ReadonlyMap<string, readonly Entry[]>,
  opening: EntryOf<'aircraft'>,
): SummedThing {
  const own = inRecordOrder(list);
  const [first] = own.filter((e): e is EntryOf<'part'> => e.kind === 'part');
  const fitments = own.filter((e): e is EntryOf<'fitment'> => e.kind === 'fitment');
  const [fitment] = fitments;
  if (fitments.length !== 1 || own.filter((e) => e.kind === 'part').length !== 1)
    throw new NotPlain('a part that was not fitted once');
  if (own.some((e) => e.day < opening.body.built)) throw new NotPlain('an entry before it was built');
  let into = fitment!.body.into;
  let at: Entry = fitment!;
  for (let deep = 0; ; deep++) {
    if (at.day !== opening.body.built) throw new NotPlain('a part fitted later');
    if (into === opening.subject) break;
    const holder = (bySubject.get(into) ?? []).filter((e): e is EntryOf<'fitment'> => e.kind === 'fitment');
    if (holder.length !== 1 || deep > 8) throw new NotPlain('a holder that was not fitted once');
    at = holder[0]!;
    into = holder[0]!.body.into;
  }
  return thingOf(id, own, first!.body.part, (first!.body.built as Day | undefined) ?? null, fitment!.day);
}

function thingOf(id: string, own: readonly Entry[], what: string, built: Day | null, fitted: Day | null): SummedThing {
  const done = own.flatMap((e): Done[] => {
    if (e.kind !== 'accomplished') return [];
    const { directive, issue, action, finding } = e.body;
    return [{ day: e.day, order: e.order, entry: e.id, directive, issue, action, finding }];
  });
  return { id, what, partNumber: attributesOf(own).part_number, built, fitted, done };
}

/** Attributes as last stated. */
function attributesOf(own: readonly Entry[]): Record<string, string> {
  const out: Record<string, string> = {};
  const set = (name: string, value: string | undefined) => {
    if (value !== undefined) out[name] = value;
  };
  for (const e of own) {
    if (e.kind === 'aircraft') for (const n of ['registration', 'model', 'serial'] as const) set(n, e.body[n]);
    if (e.kind === 'part') set('part_number', e.body.part_number);
    if (e.kind === 'attribute') set(e.body.name, e.body.value);
    if (e.kind === 'seen' && (e.body.what === 'part_number' || e.body.what === 'serial'))
      set(e.body.what, e.body.value);
  }
  return out;
}
