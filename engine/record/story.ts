import type { Day, Moment } from '../foundation/day.ts';
import { constantForm } from '../foundation/region/index.ts';
import { entriesBySubject } from './by-subject.ts';
import type { Happened, Lived, Story } from './facts.ts';
import { add } from './groups.ts';
import type { RecordModel } from './model.ts';
import { before, firstNotBefore, momentOf, notAfter } from './moments.ts';
import type { RegionBuilder } from './region-builder.ts';
import type { Presence } from './stays.ts';
import type { Timeline } from './timeline.ts';
import { tooClose } from './too-close.ts';
import { type Counted, countedInspections, inspectionKinds } from './wording.ts';

export interface KitTime {
  readonly kit: string;
  readonly from: Moment;
  readonly to: Moment | null;
  readonly entry: string;
}
const during = (m: Moment, p: { from: Moment; to: Moment | null }): boolean =>
  notAfter(p.from, m) && (p.to === null || notAfter(m, p.to));

/** Times with a kit fitted on the thing itself or on what it sat in. */
export function kitTimes(model: RecordModel, present: readonly Presence[]): KitTime[] {
  return present.flatMap((p) => {
    const open = new Map<string, { from: Moment; entry: string }>();
    const times: KitTime[] = [];
    for (const e of entriesBySubject(model.entries).get(p.id) ?? []) {
      if (e.kind !== 'kit') continue;
      const was = open.get(e.body.kit);
      if (e.body.action === 'fitted') {
        if (!was) open.set(e.body.kit, { from: momentOf(e), entry: e.id });
      } else if (was) {
        times.push({ kit: e.body.kit, ...was, to: momentOf(e) });
        open.delete(e.body.kit);
      }
    }
    for (const [kit, was] of open) times.push({ kit, ...was, to: null });
    return times.flatMap((t) => {
      const from = before(t.from, p.from) ? p.from : t.from;
      const to = t.to === null ? p.to : p.to !== null && before(p.to, t.to) ? p.to : t.to;
      return to !== null && !before(from, to) ? [] : [{ ...t, from, to }];
    });
  });
}

/** Events on the thing itself, or on what it sat in while it sat there. */
export function eventsOf(model: RecordModel, present: readonly Presence[]): Happened[] {
  return present
    .flatMap((p) =>
      (entriesBySubject(model.entries).get(p.id) ?? []).flatMap((e) =>
        e.kind === 'event' && during(momentOf(e), p) ? [{ what: e.body.event, moment: momentOf(e), entry: e.id }] : [],
      ),
    )
    .sort((a, b) => (before(a.moment, b.moment) ? -1 : 1));
}

export function countedFor(model: RecordModel, present: readonly Presence[], aircraft: string | null): Counted[] {
  return present.flatMap((p) => countedInspections(model, p.id, aircraft).filter((c) => during(momentOf(c.entry), p)));
}

/** The story of a thing: the segments of its carriers while it was there, with kits, events and inspections. */
export function storyOf(
  model: RecordModel,
  built: Day | null,
  present: readonly Presence[],
  timelines: ReadonlyMap<string, Timeline>,
  cuts: readonly Moment[],
  builder: RegionBuilder,
  opening: readonly Lived[],
  aircraft: string | null,
): Story & { readonly counted: readonly Counted[] } {
  const kits = kitTimes(model, present);
  const lived: Lived[] = [...opening];
  for (const p of present)
    for (const s of timelines.get(p.id)?.segments ?? [])
      if (notAfter(p.from, s.from) && (p.to === null || notAfter(s.to, p.to)))
        lived.push({
          from: s.from,
          to: s.to,
          hours: s.hours,
          landings: s.landings,
          totalHours: s.totalHours,
          totalLandings: s.totalLandings,
          inspections: s.inspections,
          kits: [
            ...new Set(
              kits.filter((k) => notAfter(k.from, s.from) && (k.to === null || notAfter(s.to, k.to))).map((k) => k.kit),
            ),
          ],
        });
  const kinds = inspectionKinds(model);
  const counted = countedFor(model, present, aircraft);
  const doubted = new Set(present.flatMap((p) => tooClose(model, p.id).map((x) => `${x.second.id}|${x.kind}`)));
  const inspections = counted.flatMap((c) =>
    (c.kinds ?? []).flatMap((kind) =>
      doubted.has(`${c.entry.id}|${kind}`) ? [] : [{ kind, moment: momentOf(c.entry), form: constantForm(1) }],
    ),
  );
  const mayCount = (kind: string, list: readonly Counted[], why: string) => {
    const last = list.at(-1)!;
    inspections.push({
      kind,
      moment: momentOf(last.entry),
      form: builder.figure(`inspections ${kind} ${why}, to ${last.entry.day}`, 0, list.length, true),
    });
  };
  const cutOf = (c: Counted) => firstNotBefore(cuts, momentOf(c.entry));
  const close = new Map<string, Counted[]>();
  for (const c of counted)
    for (const kind of c.kinds ?? []) if (doubted.has(`${c.entry.id}|${kind}`)) add(close, `${cutOf(c)}|${kind}`, c);
  for (const [at, list] of close) mayCount(at.slice(at.indexOf('|') + 1), list, 'closer than the hours allow');
  const open = new Map<number, Counted[]>();
  for (const c of counted) if (!c.kinds) add(open, cutOf(c), c);
  for (const list of open.values()) for (const kind of kinds) mayCount(kind, list, 'without ruling');
  return {
    built,
    uses: usesOf(model, lived),
    kinds,
    kits: [...new Set(kits.map((k) => k.kit))],
    lived,
    events: eventsOf(model, present),
    inspections,
    counted,
  };
}

const usesOf = (model: RecordModel, lived: readonly Lived[]): string[] => [
  ...new Set([...model.uses, ...lived.flatMap((l) => [...l.hours.keys()])]),
];
