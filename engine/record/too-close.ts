import { SECONDS_PER_HOUR } from '../foundation/convert.ts';
import { daysBetween } from '../foundation/day.ts';
import { hoursText } from './amounts.ts';
import type { EntryOf } from './document.ts';
import { type Ledger, ledgerOf } from './ledger.ts';
import type { Finding, RecordModel } from './model.ts';
import { before, firstNotBefore, momentOf, notAfter } from './moments.ts';
import { countedInspections } from './wording.ts';

type Papers = Pick<RecordModel, 'entries' | 'things' | 'policy'>;
export interface TooClose {
  readonly kind: string;
  readonly first: EntryOf<'inspection'>;
  readonly second: EntryOf<'inspection'>;
  /** Most that can have been flown between the two. */
  readonly most_s: number;
}
/** Counted by the calendar, however little was flown. */
const BY_CALENDAR = /annual|month|year/;

const memo = new WeakMap<readonly unknown[], Map<string, readonly TooClose[]>>();

/**
 * Inspections by hours that follow the one before closer than the shop holds possible: more inspections than the
 * hours allow. Either hours are missing or an inspection is entered twice; so the second of them may count or not.
 */
export function tooClose(model: Papers, aircraft: string): readonly TooClose[] {
  let made = memo.get(model.entries);
  if (!made) {
    made = new Map();
    memo.set(model.entries, made);
  }
  let found = made.get(aircraft);
  if (!found) {
    found = find(model, aircraft);
    made.set(aircraft, found);
  }
  return found;
}

function find(model: Papers, aircraft: string): TooClose[] {
  const ledger = ledgerOf(model, aircraft);
  if (!ledger) return [];
  const closest_s = model.policy.closest_inspections_h * SECONDS_PER_HOUR;
  const last = new Map<string, EntryOf<'inspection'>>();
  const out: TooClose[] = [];
  for (const { entry, kinds } of countedInspections(model, aircraft, aircraft))
    for (const kind of kinds ?? []) {
      if (BY_CALENDAR.test(kind)) continue;
      const first = last.get(kind);
      const most_s = first ? mostFlown(ledger, first, entry) : closest_s;
      if (first && most_s < closest_s) out.push({ kind, first, second: entry, most_s });
      else last.set(kind, entry);
    }
  return out;
}

/** Most flown between two entries: the intervals between readings that they touch, with the rows in between; infinite where nothing was read since. */
function mostFlown(ledger: Ledger, first: EntryOf<'inspection'>, second: EntryOf<'inspection'>): number {
  const [from, to] = [momentOf(first), momentOf(second)];
  const moments = ledger.knots.map((k) => k.moment);
  let most = 0;
  for (let i = Math.max(0, firstNotBefore(moments, from) - 1); i < ledger.intervals.length; i++) {
    const v = ledger.intervals[i]!;
    if (!before(v.from.moment, to)) break;
    if (v.to && notAfter(v.to.moment, from)) continue;
    if (!v.to && !v.rows.some((r) => notAfter(to, r.to))) return Number.POSITIVE_INFINITY; // flying since is not read
    const rows = v.rows.filter((r) => before(from, r.to) && before(r.from, to));
    most += (v.to ? Math.max(0, v.rest_s.high) : 0) + rows.reduce((t, r) => t + r.hours_s, 0);
  }
  return Math.min(most, daysBetween(first.day, second.day) * 24 * SECONDS_PER_HOUR);
}

export const tooCloseFindings = (model: Papers, aircraft: string): Finding[] =>
  tooClose(model, aircraft).map((x) => ({
    code: 'record.more-inspections-than-hours',
    text: `Two inspections that count as ${x.kind.replaceAll('_', ' ')}, on ${x.first.day} and ${x.second.day}, with at most ${hoursText(x.most_s)} flown between them: more than the hours allow. The second may count or not.`,
    entries: [x.first.id, x.second.id],
    remedy: 'Look at both rows: one is entered twice, or a reading between them is wrong; then correct it',
  }));
