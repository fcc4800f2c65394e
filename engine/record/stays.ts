import type { Moment } from '../foundation/day.ts';
import { Refusal } from '../foundation/refusal.ts';
import { entriesBySubject } from './by-subject.ts';
import type { Entry } from './document.ts';
import type { Finding } from './model.ts';
import { before, earliest, latest, momentOf } from './moments.ts';

/** A part sat in a place of its holder from one moment to another; `to` is null while it is still there. */
export interface Stay {
  readonly part: string;
  readonly into: string;
  readonly place: string;
  readonly from: Moment;
  readonly to: Moment | null;
  readonly entries: readonly string[];
}
/** A thing was present (itself, or something it sat in) from one moment to another. */
export interface Presence {
  readonly id: string;
  readonly from: Moment;
  readonly to: Moment | null;
  readonly entries: readonly string[];
}
type Entries = readonly Entry[];

/** Where a part sat, oldest first. A fitment elsewhere ends the stay before it (and is a finding). */
export function staysOf(entries: Entries, part: string): { stays: Stay[]; findings: Finding[] } {
  const stays: Stay[] = [];
  const findings: Finding[] = [];
  let open: Stay | null = null;
  const close = (to: Moment, entry: string) => {
    if (open) stays.push({ ...open, to, entries: [...open.entries, entry] });
    open = null;
  };
  for (const e of entriesBySubject(entries).get(part) ?? []) {
    if (e.kind === 'fitment') {
      const was = open as Stay | null;
      if (was && (was.into !== e.body.into || was.place !== e.body.place))
        findings.push({
          code: 'record.part-in-two-places',
          text: `${part} is fitted into ${e.body.into} (${e.body.place}) on ${e.day} while it still sits in ${was.into} (${was.place}).`,
          entries: [...was.entries, e.id],
          remedy: 'Record the removal, or correct one of the two fitments; until then it moved on the later day',
        });
      close(momentOf(e), e.id);
      open = { part, into: e.body.into, place: e.body.place, from: momentOf(e), to: null, entries: [e.id] };
    } else if (e.kind === 'removal') {
      if (!open)
        findings.push({
          code: 'record.removal-without-fitment',
          text: `${part} is taken out on ${e.day}, but no entry says where it sat.`,
          entries: [e.id],
          remedy: 'Record where and since when it was fitted: its life before that day is not counted',
        });
      close(momentOf(e), e.id);
    }
  }
  if (open) stays.push(open);
  return { stays, findings };
}

/**
 * The thing itself and all it sat in, through any number of holders, each with its time.
 * @throws Refusal `record.part-in-itself`
 */
export function presences(entries: Entries, id: string): Presence[] {
  return [{ id, from: FIRST, to: null, entries: [] }, ...holders(entries, id, FIRST, null, [id])];
}
export const FIRST: Moment = { day: '1900-01-01' as Moment['day'], order: -1 };

function holders(entries: Entries, id: string, from: Moment, to: Moment | null, path: readonly string[]): Presence[] {
  return staysOf(entries, id).stays.flatMap((s) => {
    const a = latest(s.from, from);
    const b = s.to && to ? earliest(s.to, to) : (s.to ?? to);
    if (b && !before(a, b)) return [];
    if (path.includes(s.into))
      throw new Refusal('record.part-in-itself', {
        given: `${[...path, s.into].join(' in ')}`,
        allowed: 'parts that sit in other things',
        remedy: `Correct the fitment (entry ${s.entries[0]})`,
      });
    return [{ id: s.into, from: a, to: b, entries: s.entries }, ...holders(entries, s.into, a, b, [...path, s.into])];
  });
}
