import type { RandomSource } from '../random.ts';
import { best, impossible } from './extremes.ts';
import { scaleForm, variableForm } from './forms.ts';
import type { Region } from './model.ts';
import { prepare } from './prepare.ts';

/**
 * A random possible history: one variable after the other, in random order, takes a value between what is
 * still possible for it (often one of the two ends, where extremes live). Reaches every history; not uniform.
 * For tests and demonstrations.
 *
 * @throws Refusal `region.impossible`
 */
export function sampleRegion(region: Region, random: RandomSource): number[] {
  const order = region.variables.map((_, i) => [random.next(), i] as const).sort((a, b) => a[0] - b[0]);
  let now: Region = region;
  for (const [, v] of order) {
    const high = best(prepare(now), variableForm(v));
    const low = best(prepare(now), scaleForm(variableForm(v), -1));
    if (!high || !low) throw impossible(now);
    const [a, b] = [-low.value || 0, high.value];
    const where = random.next();
    const between = where < 0.2 ? a : where > 0.8 ? b : a + random.next() * (b - a);
    const value = now.variables[v]!.integer ? Math.round(between) : between;
    const next = settle(now, v, value);
    now = best(prepare(next), { constant: 0, terms: [] }) ? next : settle(now, v, a);
  }
  return now.variables.map((v) => v.low);
}

const settle = (region: Region, v: number, value: number): Region => ({
  ...region,
  variables: region.variables.map((w, i) => (i === v ? { ...w, low: value, high: value } : w)),
});
