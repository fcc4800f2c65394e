import type { Bounds } from '../foundation/bounds.ts';
import type { Moment } from '../foundation/day.ts';
import { Refusal } from '../foundation/refusal.ts';
import { countBounds, secondsBounds } from './amounts.ts';
import { entriesOf } from './by-subject.ts';
import type { Entry, EntryOf } from './document.ts';
import type { Finding } from './model.ts';
import { before, endOf, notAfter, startOf } from './moments.ts';

export interface UseShare {
  readonly use: string;
  readonly hours_s: Bounds | null;
  readonly landings: Bounds | null;
}
/** A stretch of time of which a paper says how it was flown. */
export interface UsePeriod {
  readonly entry: EntryOf<'use'>;
  readonly from: Moment;
  readonly to: Moment;
  /** Uses that it allows; null: any. */
  readonly uses: readonly string[] | null;
  readonly shares: readonly UseShare[];
}
export interface DeclaredGap {
  readonly entry: EntryOf<'gap'>;
  readonly from: Moment;
  readonly to: Moment;
}
type Entries = { entries: readonly Entry[] };

/** @throws Refusal `record.period-reversed` */
export function refuseReversed(e: EntryOf<'use'> | EntryOf<'gap'>): void {
  if (e.body.to === undefined || e.body.from <= e.body.to) return;
  throw new Refusal('record.period-reversed', {
    given: `entry ${e.id} runs from ${e.body.from} to ${e.body.to}`,
    allowed: 'the earlier day first',
    remedy: 'Exchange the two days',
  });
}

export function periodsOfUse(model: Entries, aircraft: string, end: Moment): UsePeriod[] {
  return entriesOf(model, aircraft, 'use').map((entry) => {
    refuseReversed(entry);
    const { from, to, use, split, rest } = entry.body;
    const named = (split ?? []).map((s) => s.use);
    const others = rest ?? use;
    return {
      entry,
      from: startOf(from),
      to: to === undefined ? end : endOf(to),
      uses: others === undefined ? null : [...new Set([...named, others])],
      shares: (split ?? []).map((s) => ({
        use: s.use,
        hours_s: s.hours_h === undefined ? null : secondsBounds(s.hours_h),
        landings: s.landings === undefined ? null : countBounds(s.landings),
      })),
    };
  });
}

export function declaredGaps(model: Entries, aircraft: string): DeclaredGap[] {
  return entriesOf(model, aircraft, 'gap').map((entry) => {
    refuseReversed(entry);
    return { entry, from: startOf(entry.body.from), to: endOf(entry.body.to) };
  });
}

export const covers = (p: { from: Moment; to: Moment }, from: Moment, to: Moment): boolean =>
  notAfter(p.from, from) && notAfter(to, p.to);
export const overlaps = (p: { from: Moment; to: Moment }, from: Moment, to: Moment): boolean =>
  before(p.from, to) && before(from, p.to);

/**
 * Uses that any covering period allows: of two papers each may name what the other leaves out, and the wider is never
 * softer. Papers that allow none in common are a finding.
 */
export function allowedUses(
  periods: readonly UsePeriod[],
  any: readonly string[],
  findings: Finding[],
): readonly string[] {
  const stated = periods.map((p) => p.uses ?? any);
  if (stated.length === 0) return any;
  const common = stated[0]!.filter((u) => stated.every((s) => s.includes(u)));
  const entries = periods.map((p) => p.entry.id);
  const all = [...new Set(stated.flat())];
  if (common.length === 0 && !findings.some((f) => f.entries.join() === entries.join()))
    findings.push({
      code: 'record.uses-contradict',
      text: `Papers state different uses for the same time (${all.join(', ')}); any of them may be true.`,
      entries,
      remedy: 'Correct the days or the use of one of them',
    });
  return all;
}
