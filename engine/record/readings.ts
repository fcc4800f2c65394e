import type { Day } from '../foundation/day.ts';
import type { Ledger } from './ledger.ts';
import type { Life } from './model.ts';

type Reading = Life['readings'][number];

/**
 * Totals as read, oldest first; where the meters give bounds only, the higher end. A log by flights carries its total on from the last reading: it is shown once a
 * month and at its end, so that a rate can be read from it.
 */
export function readingsOf(ledger: Ledger, until: Day): Reading[] {
  const landings = new Map(ledger.landingKnots.map((k) => [k.entry, k.landings]));
  const out: Reading[] = ledger.knots.slice(1).map((k) => ({
    day: k.moment.day,
    total_s: k.total.high,
    landings: landings.get(k.entry) ?? null,
    entry: k.entry,
  }));
  const last = ledger.knots.at(-1)!;
  const open = ledger.intervals.at(-1)!.rows;
  if (open.length > 0) {
    const lastLanding = ledger.landingKnots.at(-1)!;
    let total_s = last.total.high;
    let count: number | null = lastLanding.moment.day === last.moment.day ? lastLanding.landings : null;
    open.forEach((r, n) => {
      total_s += r.hours_s;
      count = count === null || r.landings === null ? null : count + r.landings;
      const next = open[n + 1];
      if (!next || next.to.day.slice(0, 7) !== r.to.day.slice(0, 7))
        out.push({ day: r.to.day, total_s, landings: count, entry: r.entry.id });
    });
  }
  return out.filter((r) => r.day <= until);
}
