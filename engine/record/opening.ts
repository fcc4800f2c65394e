import { type Bounds, exactly } from '../foundation/bounds.ts';
import { SECONDS_PER_HOUR } from '../foundation/convert.ts';
import { type Day, daysBetween, type Moment } from '../foundation/day.ts';
import { addForms, constantForm, type LinearForm } from '../foundation/region/index.ts';
import { countBounds, secondsBounds } from './amounts.ts';
import { entriesOf } from './by-subject.ts';
import { mostFlown_s } from './ceiling.ts';
import type { Lived } from './facts.ts';
import type { Finding, Gap, RecordModel, Thing } from './model.ts';
import type { RegionBuilder } from './region-builder.ts';
import { FIRST, type Stay } from './stays.ts';
import { inspectionKinds } from './wording.ts';

export interface Opened {
  readonly lived: readonly Lived[];
  readonly gaps: readonly Gap[];
  readonly findings: readonly Finding[];
  readonly entries: readonly string[];
  readonly variables: readonly number[];
}
const NOTHING: Opened = { lived: [], gaps: [], findings: [], entries: [], variables: [] };
interface Lot {
  readonly hours: Bounds;
  readonly landings: Bounds;
  readonly uses: Readonly<Record<string, { hours: Bounds; landings: Bounds | null }>>;
  readonly inspections: Readonly<Record<string, Bounds>>;
}

/**
 * What a part had lived before the record follows it. With an opening: its figures, bounds as variables, uses not
 * named open. Without one: nothing if it was fitted when its carrier was built or within the stale time of its own
 * making; else unknown, bounded only by the ceiling, and a gap.
 */
export function openingOf(
  model: RecordModel,
  thing: Thing,
  first: Stay | null,
  carrierBuilt: Day | null,
  builder: RegionBuilder,
): Opened {
  const openings = entriesOf(model, thing.id, 'opening');
  const e = openings.at(-1);
  if (e) {
    const uses = Object.fromEntries(
      Object.entries(e.body.uses ?? {}).map(([u, x]) => [
        u,
        { hours: secondsBounds(x.hours_h), landings: x.landings === undefined ? null : countBounds(x.landings) },
      ]),
    );
    const inspections = Object.fromEntries(
      Object.entries(e.body.inspections ?? {}).map(([k, n]) => [k, countBounds(n)]),
    );
    const lot = { hours: secondsBounds(e.body.hours_h), landings: countBounds(e.body.landings), uses, inspections };
    const made = lived(model, lot, { day: e.day, order: e.order }, `before ${e.day} (entry ${e.id})`, builder);
    const gap: Gap = {
      id: e.id,
      from: thing.built ?? e.day,
      to: e.day,
      because: e.body.because ?? 'Its life before this record is known from an opening only',
      papers: ['Record of the donor aircraft'],
      what: ['hours', 'landings', 'uses', 'inspections'],
      variables: made.variables,
    };
    return {
      lived: [made.lived],
      gaps: made.variables.length > 0 ? [gap] : [],
      findings: [],
      entries: [e.id],
      variables: made.variables,
    };
  }
  if (!first || first.from.day === carrierBuilt) return NOTHING;
  const since = thing.built ?? carrierBuilt;
  if (!since || daysBetween(since, first.from.day) <= model.policy.stale_after_days) return NOTHING;
  const hours = mostFlown_s(model.policy, daysBetween(since, first.from.day));
  const most = Math.ceil((hours / SECONDS_PER_HOUR) * model.policy.ceiling_landings_per_hour);
  const lot = { hours: { low: 0, high: hours }, landings: { low: 0, high: most }, uses: {}, inspections: {} };
  const made = lived(model, lot, first.from, `before it was fitted on ${first.from.day}`, builder);
  const finding: Finding = {
    code: 'record.no-opening',
    text: `No paper says what ${thing.id} lived before it was fitted on ${first.from.day}${thing.built ? '' : '; it is taken as no older than its carrier'}.`,
    entries: first.entries,
    remedy: 'Record its opening: the figures of the donor, or a stated policy of the shop',
  };
  const gap: Gap = {
    id: `${thing.id}:before`,
    from: since,
    to: first.from.day,
    because: 'No opening is recorded for this part',
    papers: ['Record of the donor aircraft'],
    what: ['hours', 'landings', 'uses', 'inspections'],
    variables: made.variables,
  };
  return { lived: [made.lived], gaps: [gap], findings: [finding], entries: first.entries, variables: made.variables };
}

function lived(model: RecordModel, lot: Lot, to: Moment, where: string, builder: RegionBuilder) {
  const start = builder.size;
  const named = Object.keys(lot.uses);
  const others = model.uses.filter((u) => !named.includes(u));
  const share = (what: 'hours' | 'landings', all: Bounds): { by: Map<string, LinearForm>; total: LinearForm } => {
    const by = new Map<string, LinearForm>();
    if (all.high === 0) return { by, total: constantForm(0) };
    for (const u of named) {
      const stated = lot.uses[u]![what];
      by.set(
        u,
        builder.figure(
          `${what} ${u}, ${where}`,
          stated?.low ?? 0,
          Math.min(stated?.high ?? all.high, all.high),
          what === 'landings',
        ),
      );
    }
    const settled = addForms(...by.values());
    const full = settled.terms.length === 0 && settled.constant >= all.high;
    if (!full)
      for (const u of others) by.set(u, builder.figure(`${what} ${u}, ${where}`, 0, all.high, what === 'landings'));
    const sum = addForms(...by.values());
    builder.hold(`${what} ${where}`, sum, all.low, all.high);
    return { by, total: all.low === all.high ? constantForm(all.low) : sum };
  };
  const hours = share('hours', lot.hours);
  const landings = share('landings', lot.landings);
  const inspections = new Map<string, LinearForm>();
  const most =
    lot.hours.high === 0 ? 0 : Math.floor(lot.hours.high / (model.policy.closest_inspections_h * SECONDS_PER_HOUR)) + 1;
  for (const kind of inspectionKinds(model)) {
    const n = lot.inspections[kind] ?? (most === 0 ? exactly(0) : { low: 0, high: most });
    inspections.set(kind, builder.figure(`inspections ${kind}, ${where}`, n.low, n.high, true));
  }
  const made: Lived = {
    from: FIRST,
    to,
    hours: hours.by,
    landings: landings.by,
    totalHours: hours.total,
    totalLandings: landings.total,
    inspections,
    kits: [],
  };
  return { lived: made, variables: Array.from({ length: builder.size - start }, (_, i) => start + i) };
}
