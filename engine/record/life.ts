import { type Day, daysBetween, type Moment } from '../foundation/day.ts';
import { type LinearForm, linearExtremes, type Region } from '../foundation/region/index.ts';
import { type Dispute, disputesOf, withDisputes } from './disputes.ts';
import { factsAt, withAge } from './facts.ts';
import { figureOf } from './figure.ts';
import { edgeEntries, gapsOf } from './gaps.ts';
import { ledgerOf } from './ledger.ts';
import type { Facts, Finding, Gap, Life, RecordModel, Stretch, Thing } from './model.ts';
import { before, endOf, inOrder, notAfter } from './moments.ts';
import { openingOf } from './opening.ts';
import { readingsOf } from './readings.ts';
import { refuseUnknownSubject } from './refusals.ts';
import { RegionBuilder } from './region-builder.ts';
import { doesNotFit } from './splits.ts';
import { type Presence, presences, staysOf } from './stays.ts';
import { eventsOf, kitTimes, storyOf } from './story.ts';
import { type Timeline, timelineOf } from './timeline.ts';
import { unruledFindings } from './wording.ts';

/**
 * What an aircraft or a part has lived through up to a day: every possible history at once.
 *
 * A part lives with the aircraft that carries it, through any chain of holders, and not at all on the shelf.
 * All carriers stand in one region, so that limits on the part and on its aircraft see the same history.
 * Flying beyond the last reading (or listed row) is not part of the life: its figures are as of that reading.
 *
 * Not valid for a day after the day of the record.
 *
 * @throws Refusal `record.subject-unknown`, `record.part-in-itself`, `record.period-reversed`,
 *   `record.entry-in-future` if `until` lies after the day of the record
 */
export function lifeOf(model: RecordModel, subject: string, asked: { until: Day; cuts?: readonly Day[] }): Life {
  const thing = refuseUnknownSubject(model, subject, asked.until);
  const { until } = asked;
  const end = endOf(until);
  const builder = new RegionBuilder();
  const present = presences(model.entries, subject).filter((p) => notAfter(p.from, end));
  const carriers = [...new Set(present.filter((p) => model.things.get(p.id)?.kind === 'aircraft').map((p) => p.id))];
  const days = [...new Set([...(asked.cuts ?? []), until])].filter((d) => d <= until).sort();
  const cuts = days.map(endOf);
  const timelines = new Map<string, Timeline>();
  for (const id of carriers) {
    const ledger = ledgerOf(model, id);
    if (!ledger) continue;
    const own = presences(model.entries, id);
    const times = present.filter((p) => p.id === id);
    const here = (m: Moment) => times.some((p) => notAfter(p.from, m) && (p.to === null || notAfter(m, p.to)));
    const edges = inOrder([
      ...cuts,
      ...times.flatMap((p) => (p.to ? [p.from, p.to] : [p.from])),
      ...momentsOf(model, present).filter(here),
      ...momentsOf(model, own),
    ]);
    timelines.set(id, timelineOf(model, ledger, edges, end, builder));
  }
  const stay = thing.kind === 'part' ? (staysOf(model.entries, subject).stays[0] ?? null) : null;
  const firstCarrier = present.find((p) => model.things.get(p.id)?.kind === 'aircraft');
  const carrierBuilt = firstCarrier ? (model.things.get(firstCarrier.id)?.built ?? null) : null;
  const original = stay !== null && stay.from.day === carrierBuilt;
  const opening = thing.kind === 'part' ? openingOf(model, thing, stay, carrierBuilt, builder) : null;
  const built = thing.built ?? (original ? carrierBuilt : null);
  const story = storyOf(model, built, present, timelines, cuts, builder, opening?.lived ?? [], thing.aircraft);
  const carrierStories = new Map(
    carriers
      .filter((id) => id !== subject && timelines.has(id))
      .map((id) => [id, storyOf(model, model.things.get(id)!.built, [self(id)], timelines, cuts, builder, [], id)]),
  );
  const { region, letGo } = builder.region();
  const carrierOn = (day: Day): string | null =>
    present.find(
      (p) => timelines.has(p.id) && notAfter(p.from, endOf(day)) && (p.to === null || before(endOf(day), p.to)),
    )?.id ?? null;
  const shown = carrierOn(until) ?? firstCarrier?.id ?? null;
  const mine = carriers.flatMap((id) => ownSegments(timelines.get(id), present));
  const lastCarrier = shown ? ledgerOf(model, shown) : null;
  const readings = lastCarrier ? readingsOf(lastCarrier, until) : [];
  const lastReading = readings.at(-1) ?? null;
  const found = mine.map(({ timeline, segments }) => gapsOf(timeline, segments, nameOf(model, timeline.aircraft)));
  const gaps: Gap[] = [...(opening?.gaps ?? []), ...found.flatMap((f) => f.gaps)];
  const findings = onlyOnce([
    ...(opening?.findings ?? []),
    ...model.findings.filter((f) => concerns(model, f, present)),
    ...[...timelines.values()].flatMap((t) => t.findings),
    ...found.flatMap((f) => f.findings),
    ...unruledFindings(story.counted),
    ...letGo.map((e) => doesNotFit([e])),
    ...(thing.kind === 'part' && !stay && !opening?.lived.length ? [notFitted(thing)] : []),
  ]);
  const stretches = mine.flatMap(({ timeline, segments }) =>
    segments
      .filter((s) => notAfter(s.to, end) && (s.gap !== null || notAfter(s.to, timeline.known)))
      .map((s) => stretchOf(timeline, s, gaps, kitTimes(model, present), region)),
  );
  let held: readonly { dispute: Dispute; life: Life }[] | null = null;
  const others = () => {
    held ??= disputesOf(model)
      .filter((d) => carriers.includes(d.aircraft))
      .map((dispute) => ({ dispute, life: lifeOf(dispute.model, subject, asked) }));
    return held;
  };
  const memo = new Map<Day, Facts>();
  const memoCarrier = new Map<string, Facts | null>();
  const cutFor = (day: Day): Moment => endOf(days.findLast((d) => d <= day) ?? ('1900-01-01' as Day));
  const at = (day: Day): Facts => remember(memo, day, () => withAge(factsAt(story, cutFor(day)), built, day));
  return {
    subject: thing,
    until,
    region,
    stretches: stretches.sort((a, b) => (before(a.from, b.from) ? -1 : 1)),
    gaps,
    at,
    figure: (fact, day) =>
      withDisputes(
        figureOf({ model, story, region, gaps, at, lastReading, present, opening }, fact, day),
        others().map((o) => o.life.figure(fact, day).value),
        others().map((o) => o.dispute),
      ),
    carrierAt: (day, aboard = day) =>
      remember(memoCarrier, `${day}|${aboard}`, () => {
        const id = carrierOn(aboard);
        if (id === null) return null;
        if (id === subject) return at(day);
        const own = carrierStories.get(id)!;
        return withAge(factsAt(own, cutFor(day)), own.built, day);
      }),
    readings,
    lastReading,
    stale: lastReading === null || daysBetween(lastReading.day, until) > model.policy.stale_after_days,
    findings,
    factNames: Object.keys(at(until)).sort(),
    policy: model.policy,
  };
}

const self = (id: string): Presence => presences([], id)[0]!;
const momentsOf = (model: RecordModel, present: readonly Presence[]): Moment[] => [
  ...eventsOf(model, present).map((e) => e.moment),
  ...kitTimes(model, present).flatMap((k) => (k.to ? [k.from, k.to] : [k.from])),
];

function ownSegments(timeline: Timeline | undefined, present: readonly Presence[]) {
  if (!timeline) return [];
  const times = present.filter((p) => p.id === timeline.aircraft);
  return [
    {
      timeline,
      segments: timeline.segments.filter((s) =>
        times.some((p) => notAfter(p.from, s.from) && (p.to === null || notAfter(s.to, p.to))),
      ),
    },
  ];
}

function stretchOf(
  t: Timeline,
  s: Timeline['segments'][number],
  gaps: readonly Gap[],
  kits: ReturnType<typeof kitTimes>,
  region: Region,
): Stretch {
  const variables = [...s.variables];
  const gap = gaps.find((g) => variables.some((v) => g.variables.includes(v)))?.id ?? null;
  return {
    from: s.from,
    to: s.to,
    aircraft: t.aircraft,
    gap,
    get hours_s() {
      return boundsOf(s.totalHours, region);
    },
    get landings() {
      return boundsOf(s.totalLandings, region);
    },
    uses: s.uses.filter((u) => (s.hours.get(u)?.terms.length ?? 0) > 0 || (s.hours.get(u)?.constant ?? 0) > 0),
    kits: kits.filter((k) => notAfter(k.from, s.from) && (k.to === null || notAfter(s.to, k.to))).map((k) => k.kit),
    entries: edgeEntries(s),
    variables,
  };
}
const boundsOf = (form: LinearForm, region: Region) => {
  if (form.terms.length === 0) return { low: form.constant, high: form.constant };
  const e = linearExtremes(form, region);
  return { low: e.low.value, high: e.high.value };
};

function remember<K, V>(memo: Map<K, V>, key: K, make: () => V): V {
  if (!memo.has(key)) memo.set(key, make());
  return memo.get(key)!;
}
const nameOf = (model: RecordModel, id: string): string => model.things.get(id)?.attributes.registration?.value ?? id;
const onlyOnce = (findings: readonly Finding[]): Finding[] => [
  ...new Map(findings.map((f) => [`${f.code}|${f.entries.join()}|${f.text}`, f])).values(),
];
const notFitted = (thing: Thing): Finding => ({
  code: 'record.not-fitted',
  text: `No entry says where ${thing.id} sat, and no opening what it lived: it counts nothing.`,
  entries: [],
  remedy: 'Record its fitment, or its opening',
});

/** A finding of the record belongs to a life if one of its entries speaks of what the life is made of. */
function concerns(model: RecordModel, f: Finding, present: readonly Presence[]): boolean {
  const ids = new Set(present.map((p) => p.id));
  return f.entries.some((e) => ids.has(subjectOf(model, e)));
}
const subjects = new WeakMap<RecordModel, ReadonlyMap<string, string>>();
function subjectOf(model: RecordModel, entry: string): string {
  let map = subjects.get(model);
  if (!map) {
    map = new Map(model.entries.map((e) => [e.id, e.subject]));
    subjects.set(model, map);
  }
  return map.get(entry) ?? '';
}
