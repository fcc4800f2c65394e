import type { Bounds } from '../foundation/bounds.ts';
import { SECONDS_PER_HOUR } from '../foundation/convert.ts';
import { addForms, constantForm, type LinearForm } from '../foundation/region/index.ts';
import type { Policy } from './document.ts';
import type { Groups } from './groups.ts';
import type { Finding } from './model.ts';
import { before } from './moments.ts';
import type { RegionBuilder } from './region-builder.ts';
import type { Segment } from './segments.ts';
import { overlaps, type UsePeriod, type UseShare } from './uses.ts';

/** Uses of which a paper states more landings than the ceiling lets their hours have: the paper prevails. */
export function liftCeilings(periods: readonly UsePeriod[], segments: readonly Segment[], policy: Policy): void {
  for (const p of periods)
    for (const share of p.shares) {
      const most = share.hours_s
        ? (share.hours_s.high / SECONDS_PER_HOUR) * policy.ceiling_landings_per_hour
        : Number.POSITIVE_INFINITY;
      if (!share.landings || share.landings.low <= most) continue;
      for (const s of segments) if (overlaps(p, s.from, s.to)) s.noCeiling.add(share.use);
    }
}

/**
 * Holds what a paper states of the split over its time. Where a gap lies in that time, or the time runs beyond the
 * last reading, part of the stated share may lie there: then only its upper end holds.
 */
export function holdSplits(
  periods: readonly UsePeriod[],
  segments: readonly Segment[],
  groups: Groups,
  lastKnot: Segment['to'],
  builder: RegionBuilder,
  findings: Finding[],
): void {
  const room = segments.map(() => ({ s: 0, n: 0 }));
  for (const g of groups.all) {
    room[g.segment]!.s += g.hours_s ?? g.room_s;
    room[g.segment]!.n += g.landings ?? (g.hours_s ?? g.room_s) / 60;
  }
  for (const p of periods) {
    if (p.shares.length === 0) continue;
    const inside = segments.filter((s) => overlaps(p, s.from, s.to));
    const own = inside.filter((s) => !s.gap);
    const part = own.length < inside.length || (p.entry.body.to !== undefined && before(lastKnot, p.to));
    for (const what of ['hours', 'landings'] as const) {
      const stated = p.shares.filter((x) => bounded(x, what));
      const least = stated.reduce((t, x) => t + bounded(x, what)!.low, 0);
      const reach = own.reduce(
        (t, s) => t + most(s, what) + (what === 'hours' ? room[s.index]!.s : room[s.index]!.n),
        0,
      );
      const tooMuch = least > reach + 1;
      if (tooMuch) findings.push(exceeds(p, what));
      for (const share of stated) {
        const b = bounded(share, what)!;
        const form = addForms(...own.map((s) => s[what].get(share.use) ?? constantForm(0)));
        if (form.constant > b.high) {
          findings.push(exceeds(p, what));
          continue;
        }
        builder.hold(
          `${what} ${share.use} as stated by entry ${p.entry.id}`,
          form,
          part || tooMuch ? 0 : b.low,
          b.high,
        );
      }
    }
  }
}

const bounded = (x: UseShare, what: 'hours' | 'landings'): Bounds | null => (what === 'hours' ? x.hours_s : x.landings);
const most = (s: Segment, what: 'hours' | 'landings'): number =>
  [...s[what].values()].reduce((t: number, f: LinearForm) => t + f.constant, 0);

const exceeds = (p: UsePeriod, what: string): Finding => ({
  code: 'record.split-does-not-fit',
  text: `The ${what} by use stated for ${p.entry.body.from} to ${p.entry.body.to ?? 'the last reading'} do not fit what was flown then.`,
  entries: [p.entry.id],
  remedy: 'Correct the share or the days; what does not fit is left open',
});
