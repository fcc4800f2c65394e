import { secondsFromHours } from '../foundation/convert.ts';
import { addDays, type Day, earlier } from '../foundation/day.ts';
import { constantForm, isConstant, linearExtremes, subtractForms } from '../foundation/region/index.ts';
import type { Facts, Life } from '../record/index.ts';
import type { Mix } from './model.ts';

const DAYS_PER_MONTH = 30.4375;
export const mixFrom = (day: Day, months = 24): Day => addDays(day, -Math.round(months * DAYS_PER_MONTH));
export const PRIVATE: Mix = {
  hours: { private: 1 },
  landingsPerHour: { private: 1 },
  from: 'no record: private flying assumed',
};

const EXACT_H = 0.01;

/** Flying by use between two days, as far as the papers settle it: hours, landings. What stays open is left out, not guessed. */
function settledSince(life: Life, from: Day): { total: number; uses: Map<string, { h: number; l: number }> } {
  const at = (d: Day): Facts => life.carrierAt(d, life.until) ?? life.at(d);
  const [now, before] = [at(life.until), at(earlier(from, life.until))];
  const exact = (name: string): number | null => {
    const form = subtractForms(now[name] ?? constantForm(0), before[name] ?? constantForm(0));
    if (isConstant(form)) return form.constant;
    const { low, high } = linearExtremes(form, life.region);
    return high.value - low.value <= EXACT_H ? low.value : null;
  };
  const uses = new Map<string, { h: number; l: number }>();
  for (const name of Object.keys(now)) {
    if (!name.startsWith('hours.') || name === 'hours.total') continue;
    const use = name.slice('hours.'.length);
    const h = exact(name);
    if (h !== null && h > EXACT_H) uses.set(use, { h, l: exact(`landings.${use}`) ?? 0 });
  }
  return { total: exact('hours.total') ?? Number.POSITIVE_INFINITY, uses };
}

const sumOf = (uses: ReadonlyMap<string, { h: number }>): number => [...uses.values()].reduce((t, u) => t + u.h, 0);
const MOSTLY = 0.99;

/**
 * The shortest stretch back from the last reading, not shorter than these months, whose uses the papers settle:
 * shares that a book states over years hold over those years only. None: the recent months as far as they are settled.
 */
function recent(life: Life, from: Day): { since: Day; uses: ReadonlyMap<string, { h: number; l: number }> } {
  const borders = [...new Set(life.stretches.flatMap((s) => [s.from.day, addDays(s.from.day, -1)]))];
  const earlierOnes = borders
    .filter((d) => d < from)
    .sort()
    .reverse();
  const first = settledSince(life, from);
  if (sumOf(first.uses) >= MOSTLY * first.total) return { since: from, uses: first.uses };
  for (const since of earlierOnes) {
    const found = settledSince(life, since);
    if (found.total > 1 && sumOf(found.uses) >= MOSTLY * found.total) return { since, uses: found.uses };
  }
  return { since: from, uses: first.uses };
}

/**
 * The flying ahead, as the recent record shows it: share of each use, landings per hour.
 * Only what the papers settle counts; without any, private flying at the landings per hour of the readings.
 */
export function mixOf(life: Life, months = 24): Mix {
  const { since, uses } = recent(life, mixFrom(life.until, months));
  const overall = landingsPerHour(life, since);
  const sum = sumOf(uses);
  if (sum <= 0) return { ...PRIVATE, landingsPerHour: { private: overall } };
  const hours: Record<string, number> = {};
  const perHour: Record<string, number> = {};
  for (const [use, { h, l }] of uses) {
    hours[use] = h / sum;
    perHour[use] = l > 0 ? l / h : overall;
  }
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

/** All flying to come in one use; the landings per hour as stated, else as the record shows them for all flying. */
export function mixAllIn(use: string, life: Life, landingsPerHour?: number): Mix {
  return {
    hours: { [use]: 1 },
    landingsPerHour: { [use]: landingsPerHour ?? landingsAhead(mixOf(life)) },
    from: 'stated',
  };
}

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
