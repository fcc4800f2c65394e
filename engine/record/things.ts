import type { Day, Moment } from '../foundation/day.ts';
import { EVIDENCE, type Evidence } from '../foundation/provenance.ts';
import { entriesBySubject } from './by-subject.ts';
import type { Entry } from './document.ts';
import type { Thing } from './model.ts';
import { momentOf } from './moments.ts';
import { presences, staysOf } from './stays.ts';

type Attributes = Record<string, { value: string; evidence: Evidence; entry: string; since: Day }>;
const better = (a: Evidence, b: Evidence): Evidence => (EVIDENCE.indexOf(a) <= EVIDENCE.indexOf(b) ? a : b);

/** Every aircraft and part that the entries open, as known on the day. */
export function thingsOf(entries: readonly Entry[], day: Day): Map<string, Thing> {
  const all = entriesBySubject(entries);
  const aircraft = new Set<string>();
  for (const e of entries) if (e.kind === 'aircraft') aircraft.add(e.subject);
  const things = new Map<string, Thing>();
  for (const [id, own] of all) {
    const opening = own.find((e) => e.kind === 'aircraft' || e.kind === 'part');
    if (opening) things.set(id, thingOf(id, opening, own, entries, aircraft, day));
  }
  return things;
}

function thingOf(
  id: string,
  opening: Entry,
  own: readonly Entry[],
  entries: readonly Entry[],
  aircraft: ReadonlySet<string>,
  day: Day,
): Thing {
  const attributes: Attributes = {};
  let identity: Evidence = opening.evidence === 'seen' ? 'copy' : opening.evidence;
  const kits: Record<string, Moment> = {};
  const set = (e: Entry, name: string, value: string | undefined) => {
    if (value !== undefined) attributes[name] = { value, evidence: e.evidence, entry: e.id, since: e.day };
  };
  for (const e of own) {
    if (e.day > day) break;
    if (e.kind === 'aircraft')
      for (const name of ['registration', 'type', 'model', 'serial', 'owner', 'base'] as const)
        set(e, name, e.body[name]);
    if (e.kind === 'part') for (const name of ['part_number', 'serial', 'stamp'] as const) set(e, name, e.body[name]);
    if (e.kind === 'attribute') set(e, e.body.name, e.body.value);
    if (e.kind === 'seen' && (e.body.what === 'stamp' || e.body.what === 'part_number' || e.body.what === 'serial')) {
      set(e, e.body.what, e.body.value);
      identity = better('seen', identity);
    }
    if (e.kind === 'kit') {
      if (e.body.action === 'fitted') kits[e.body.kit] = momentOf(e);
      else delete kits[e.body.kit];
    }
  }
  const isAircraft = opening.kind === 'aircraft';
  const now = isAircraft
    ? []
    : presences(entries, id)
        .slice(1)
        .filter((p) => p.to === null && p.from.day <= day);
  const stay = isAircraft ? undefined : staysOf(entries, id).stays.find((s) => s.to === null && s.from.day <= day);
  return {
    id,
    kind: isAircraft ? 'aircraft' : 'part',
    what: opening.kind === 'part' ? opening.body.part : 'aircraft',
    hand: opening.kind === 'part' ? opening.body.hand : 'none',
    attributes,
    built:
      opening.kind === 'part' ? (opening.body.built ?? null) : opening.kind === 'aircraft' ? opening.body.built : null,
    aircraft: isAircraft ? id : (now.find((p) => aircraft.has(p.id))?.id ?? null),
    holder: stay ? { id: stay.into, place: stay.place } : null,
    identity,
    kits,
  };
}
