import type { Bounds, Day, record, usage } from '../../engine/index.ts';

type Hours = NonNullable<usage.UsageInput['hours']>;
const HUNDREDTH = 100;
/** Outward to the hundredth: what the papers leave open is never told narrower. */
const outward = ({ low, high }: Bounds) => ({
  low_h: Math.max(0, Math.floor(low * HUNDREDTH + 1e-6) / HUNDREDTH),
  high_h: Math.max(0, Math.ceil(high * HUNDREDTH - 1e-6) / HUNDREDTH),
});

/** Hours that a part has flown in each use, as bounds over all histories that agree with its papers, and in total. */
export function hoursOf(life: record.Life, day: Day): Hours {
  const uses = life.factNames.flatMap((n) => (n.startsWith('hours.') && n !== 'hours.total' ? [n.slice(6)] : []));
  const by_use = uses
    .map((use) => ({ use, ...outward(life.figure(`hours.${use}`, day).value) }))
    .filter((h) => h.high_h > 0);
  return { by_use, total: outward(life.figure('hours.total', day).value) };
}
