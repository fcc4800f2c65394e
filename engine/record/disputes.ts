import type { Bounds } from '../foundation/bounds.ts';
import { SECONDS_PER_HOUR, SECONDS_PER_MINUTE } from '../foundation/convert.ts';
import { daysBetween } from '../foundation/day.ts';
import type { Worked } from '../foundation/working.ts';
import { seconds } from './amounts.ts';
import { entriesBySubject } from './by-subject.ts';
import type { Entry } from './document.ts';
import { ledgerOf } from './ledger.ts';
import { longestRising } from './longest.ts';
import type { RecordModel } from './model.ts';
import { withStatedTotals } from './stated-totals.ts';

/** A reading that others contradict, and the record as it would be if this one is right and they are wrong. */
export interface Dispute {
  readonly aircraft: string;
  readonly what: 'hours' | 'landings' | 'hours and landings';
  /** Entry believed here; the record itself sets it aside. */
  readonly believed: string;
  readonly against: readonly string[];
  readonly model: RecordModel;
  /** By how much the last reading lies higher here than in the book: hours in seconds, and landings. */
  readonly higher: { readonly hours_s: number; readonly landings: number };
}

/** So many readings of one aircraft are held against the others; a book with more slips is not read by guessing. */
export const MOST_DISPUTES = 12;
const DAY_S = 86_400;
/** Nobody lands more often in a day: a landing each minute. */
const DAY_LANDINGS = 1440;

interface Row {
  readonly entry: Entry;
  readonly value: number;
}
interface Field {
  readonly what: Dispute['what'];
  readonly mostPerDay: number;
  valueOf(e: Entry): number | null;
  /** The entry with another figure, or without it (null). */
  change(e: Entry, value: number | null): Entry | null;
}

const clock = (s: number): string => {
  const two = (n: number) => String(n).padStart(2, '0');
  const [h, m] = [SECONDS_PER_HOUR, SECONDS_PER_MINUTE];
  return `${Math.floor(s / h)}:${two(Math.floor((s % h) / m))}:${two(s % m)}`;
};
const HOURS: Field = {
  what: 'hours',
  mostPerDay: DAY_S,
  valueOf: (e) =>
    (e.kind === 'reading' || e.kind === 'inspection' || e.kind === 'accomplished') && e.body.total_h !== undefined
      ? seconds(e.body.total_h)
      : null,
  change: (e, value) => {
    if (e.kind !== 'reading' && e.kind !== 'inspection' && e.kind !== 'accomplished') return e;
    const { total_h: _, ...rest } = e.body;
    const bare = e.kind === 'reading' && rest && !('shows_h' in rest) && !('landings' in rest);
    if (value === null && bare) return null;
    return { ...e, body: value === null ? rest : { ...rest, total_h: clock(value) } } as Entry;
  },
};
const LANDINGS: Field = {
  what: 'landings',
  mostPerDay: DAY_LANDINGS,
  valueOf: (e) =>
    (e.kind === 'reading' || e.kind === 'accomplished') && e.body.landings !== undefined ? e.body.landings : null,
  change: (e, value) => {
    if (e.kind !== 'reading' && e.kind !== 'accomplished') return e;
    const { landings: _, ...rest } = e.body;
    const bare = e.kind === 'reading' && !('shows_h' in rest) && !('total_h' in rest);
    if (value === null && bare) return null;
    return { ...e, body: value === null ? rest : { ...rest, landings: value } } as Entry;
  },
};

const memo = new WeakMap<RecordModel, readonly Dispute[]>();
const NONE: readonly Dispute[] = [];

/**
 * Readings that cross, each believed in turn.
 *
 * The record keeps the longest run of readings that never fall and sets the others aside. Which of two papers is
 * wrong is not known until a person settles it, so each reading set aside gives a second record in which it is true
 * and those it crosses are not: earlier higher ones are dropped, later lower ones are dropped where a later reading
 * still agrees, and else raised by what they fall short, since the flying after them was seen. A reading that would
 * need more than 24 h a day, or a landing each minute, cannot be true and gives none.
 *
 * @returns at most `MOST_DISPUTES` per aircraft and figure, those that raise it first, then those that differ most
 */
export function disputesOf(model: RecordModel): readonly Dispute[] {
  let found = memo.get(model);
  if (!found) {
    found = [...model.things.values()]
      .filter((t) => t.kind === 'aircraft')
      .flatMap((t) => {
        const hours = crossing(model, t.id, HOURS);
        const landings = crossing(model, t.id, LANDINGS);
        return [...hours, ...landings, ...hours.flatMap(believedWhole), ...meterFell(model, t.id)];
      });
    memo.set(model, found);
    // What else crosses in such a record was weighed here already.
    for (const d of found) memo.set(d.model, NONE);
  }
  return found;
}

/**
 * A meter that shows less than before, where no entry says that it was changed or rolled over: the record keeps the
 * higher figure and knows no run after it. Here what it showed before is not believed, one reading after the other.
 */
function meterFell(model: RecordModel, aircraft: string): Dispute[] {
  const out: Dispute[] = [];
  for (let on = model; out.length < MOST_DISPUTES; ) {
    const fell = ledgerOf(on, aircraft)?.findings.find((f) => f.code === 'record.meter-runs-backwards');
    const [high, low] = fell?.entries ?? [];
    const wrong = on.entries.find((e) => e.id === high && e.kind === 'reading');
    if (!wrong || low === undefined) break;
    on = { ...on, entries: on.entries.flatMap((e) => (e === wrong ? (withoutMeter(e) ?? []) : [e])) };
    const higher = { hours_s: 0, landings: 0 };
    out.push({ aircraft, what: 'hours', believed: low, against: [wrong.id], model: on, higher });
  }
  return out;
}
function withoutMeter(e: Entry): Entry | null {
  if (e.kind !== 'reading') return e;
  const { meter: _, shows_h: __, ...body } = e.body;
  return Object.keys(body).length ? ({ ...e, body } as Entry) : null;
}

/** A row of which both figures cross others may be right as a whole. */
function believedWhole(hours: Dispute): Dispute[] {
  const landings = crossing(hours.model, hours.aircraft, LANDINGS).find((d) => d.believed === hours.believed);
  if (!landings) return [];
  const against = [...new Set([...hours.against, ...landings.against])];
  const higher = { hours_s: hours.higher.hours_s, landings: landings.higher.landings };
  return [{ ...landings, what: 'hours and landings', against, higher }];
}

function crossing(model: RecordModel, aircraft: string, field: Field): Dispute[] {
  const own = entriesBySubject(model.entries).get(aircraft) ?? [];
  const built = model.things.get(aircraft)?.built ?? null;
  const all = withStatedTotals(model.entries, own, aircraft);
  const rows: Row[] = all.flatMap((entry) => {
    const value = built !== null && entry.day >= built && entry.kind === 'reading' ? field.valueOf(entry) : null;
    return value === null ? [] : [{ entry, value }];
  });
  const kept = longestRising(rows.map((r) => r.value));
  if (kept.size === rows.length) return [];
  return rows
    .flatMap((_, i) => (kept.has(i) ? [] : (believing(model, aircraft, field, rows, i, built!) ?? [])))
    .sort((a, b) => raise(b) - raise(a) || b.far - a.far)
    .slice(0, MOST_DISPUTES)
    .map(({ far: _, ...d }) => d);
}

/** Those that raise what was flown come first: the worse side is never crowded out. */
const raise = ({ higher }: Dispute): number => higher.hours_s + higher.landings;

function believing(
  model: RecordModel,
  aircraft: string,
  field: Field,
  rows: readonly Row[],
  i: number,
  built: string,
): (Dispute & { far: number }) | null {
  const { value, entry } = rows[i]!;
  const earlier = rows.filter((r, k) => k < i && r.value > value);
  const later = rows.filter((r, k) => k > i && r.value < value);
  const before = rows.findLast((r, k) => k < i && r.value <= value) ?? { value: 0, entry: { day: built } };
  const days = Math.max(1, daysBetween(before.entry.day as Entry['day'], entry.day));
  if (value - before.value > days * field.mostPerDay) return null;
  const agrees = rows.findLastIndex((r, k) => k > i && r.value >= value);
  const raised = agrees < 0 ? later : later.filter((r) => rows.indexOf(r) > agrees);
  const short = raised.length ? value - Math.min(...raised.map((r) => r.value)) : 0;
  const change = new Map<string, number | null>();
  for (const r of [...earlier, ...later]) {
    const other = raised.includes(r) ? r.value + short : null;
    for (const id of [r.entry.id, ...repeating(model, aircraft, field, r)]) change.set(id, other);
  }
  const entries = model.entries.flatMap((e) => {
    if (!change.has(e.id)) return [e];
    const changed = field.change(e, change.get(e.id)!);
    return changed ? [changed] : [];
  });
  const against = [...earlier, ...later];
  const last = rows.at(-1)!;
  const higher = raised.includes(last) ? short : 0;
  return {
    aircraft,
    what: field.what,
    believed: entry.id,
    against: against.map((r) => r.entry.id),
    model: { ...model, entries },
    higher: { hours_s: field.what === 'hours' ? higher : 0, landings: field.what === 'landings' ? higher : 0 },
    far: Math.max(...against.map((r) => Math.abs(r.value - value))),
  };
}

/** Inspections and work that state the same figure on the same day: they are wrong where the row is. */
const repeating = (model: RecordModel, aircraft: string, field: Field, r: Row): string[] =>
  model.entries.flatMap((e) => {
    const states = e.kind === 'inspection' || e.kind === 'accomplished';
    if (!states || e.day !== r.entry.day || field.valueOf(e) !== r.value) return [];
    const elsewhere = model.things.get(e.subject)?.kind === 'aircraft' && e.subject !== aircraft;
    return elsewhere ? [] : [e.id];
  });

/** A figure widened by what it would be if a reading set aside were the right one. */
export function withDisputes(
  figure: Worked<Bounds>,
  others: readonly Bounds[],
  disputes: readonly Dispute[],
): Worked<Bounds> {
  const low = Math.min(figure.value.low, ...others.map((o) => o.low));
  const high = Math.max(figure.value.high, ...others.map((o) => o.high));
  if (low === figure.value.low && high === figure.value.high) return figure;
  const last = figure.working.at(-1);
  return {
    ...figure,
    value: { low, high },
    working: [
      ...figure.working,
      {
        symbol: last?.symbol ?? '',
        meaning: 'With each reading that crosses others believed in turn',
        formula: 'least to greatest of all',
        value: { low, high },
        unit: last?.unit ?? '',
        entries: disputes.flatMap((d) => [d.believed, ...d.against.slice(0, 2)]),
      },
    ],
  };
}
