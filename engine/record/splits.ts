import { SECONDS_PER_HOUR } from '../foundation/convert.ts';
import { addForms, constantForm } from '../foundation/region/index.ts';
import type { Policy } from './document.ts';
import type { Finding } from './model.ts';
import { before } from './moments.ts';
import type { RegionBuilder } from './region-builder.ts';
import type { Segment } from './segments.ts';
import { overlaps, type UsePeriod } from './uses.ts';

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
 * last reading, part of the stated share may lie there: then only its upper end holds. A share that contradicts
 * other papers is let go, with a finding.
 */
export function holdSplits(
  periods: readonly UsePeriod[],
  segments: readonly Segment[],
  lastKnot: Segment['to'],
  builder: RegionBuilder,
  findings: Finding[],
): void {
  for (const p of periods) {
    const inside = segments.filter((s) => overlaps(p, s.from, s.to));
    const own = inside.filter((s) => !s.gap);
    const part = own.length < inside.length || (p.entry.body.to !== undefined && before(lastKnot, p.to));
    for (const share of p.shares)
      for (const what of ['hours', 'landings'] as const) {
        const b = what === 'hours' ? share.hours_s : share.landings;
        if (!b) continue;
        const form = addForms(...own.map((s) => s[what].get(share.use) ?? constantForm(0)));
        const low = part ? 0 : b.low;
        if (form.terms.length > 0)
          builder.holdIfPossible(
            `${what} ${share.use} as stated by entry ${p.entry.id}`,
            form,
            low,
            b.high,
            p.entry.id,
          );
        else if (form.constant < low - 1 || form.constant > b.high + 1) findings.push(doesNotFit([p.entry.id]));
      }
  }
}

export const doesNotFit = (entries: readonly string[]): Finding => ({
  code: 'record.split-does-not-fit',
  text: 'The hours or landings that a paper states for a time do not fit what the others say of it; what does not fit is left open.',
  entries,
  remedy: 'Correct the share or the days',
});
