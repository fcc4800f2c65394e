import { secondsFromHours } from '../foundation/convert.ts';
import { addDays, type Day, earlier } from '../foundation/day.ts';
import type { Life } from '../record/index.ts';
import type { Mix } from './model.ts';

const DAYS_PER_MONTH = 30.4375;
export const mixFrom = (day: Day, months = 24): Day => addDays(day, -Math.round(months * DAYS_PER_MONTH));
export const PRIVATE: Mix = {
  hours: { private: 1 },
  landingsPerHour: { private: 1 },
  from: 'no record: private flying assumed',
};

/** Facts that the papers settle, in a stretch: what stays open is left out, not guessed. */
const settled = (now: Life['at'] extends (d: Day) => infer F ? F : never, then: typeof now, name: string): number =>
  (now[name]?.constant ?? 0) - (then[name]?.constant ?? 0);

/**
 * The flying ahead, as the recent record shows it: share of each use, landings per hour.
 * Only what the papers settle counts; without any, private flying at the landings per hour of the readings.
 */
export function mixOf(life: Life, months = 24): Mix {
  const from = mixFrom(life.until, months);
  const facts = life.carrierAt(life.until) ?? life.at(life.until);
  const before = life.carrierAt(earlier(from, life.until)) ?? life.at(earlier(from, life.until));
  const hours: Record<string, number> = {};
  const perHour: Record<string, number> = {};
  const overall = landingsPerHour(life, from);
  let sum = 0;
  for (const name of Object.keys(facts)) {
    if (!name.startsWith('hours.') || name === 'hours.total') continue;
    const h = settled(facts, before, name);
    if (h <= 1e-9) continue;
    const use = name.slice('hours.'.length);
    const l = settled(facts, before, `landings.${use}`);
    hours[use] = h;
    perHour[use] = l > 0 ? l / h : overall;
    sum += h;
  }
  if (sum <= 0) return { ...PRIVATE, landingsPerHour: { private: overall } };
  for (const u of Object.keys(hours)) hours[u]! /= sum;
  return { hours, landingsPerHour: perHour, from: 'recent record' };
}

function landingsPerHour(life: Life, from: Day): number {
  const known = life.readings.filter((r) => r.landings !== null);
  const last = known.at(-1);
  const first = known.findLast((r) => r.day <= from) ?? known[0];
  if (!last || !first || last.total_s - first.total_s < secondsFromHours(1)) return 1;
  return ((last.landings! - first.landings!) / (last.total_s - first.total_s)) * secondsFromHours(1);
}
export const landingsAhead = (m: Mix): number =>
  Object.entries(m.hours).reduce((t, [u, share]) => t + share * (m.landingsPerHour[u] ?? 1), 0);

/** Facts after flying on for some hours in this mix; the part rides along. */
export function flownOn(facts: Readonly<Record<string, number>>, mix: Mix, hours: number): Record<string, number> {
  const on: Record<string, number> = { ...facts };
  const add = (name: string, by: number) => {
    on[name] = (on[name] ?? 0) + by;
  };
  const landings = landingsAhead(mix) * hours;
  add('hours.total', hours);
  add('landings.total', landings);
  for (const [u, share] of Object.entries(mix.hours)) {
    add(`hours.${u}`, share * hours);
    add(`landings.${u}`, share * hours * (mix.landingsPerHour[u] ?? 1));
  }
  for (const name of Object.keys(facts))
    if (/^(since|kit)\./.test(name)) add(name, name.endsWith('.hours') ? hours : landings);
  return on;
}
