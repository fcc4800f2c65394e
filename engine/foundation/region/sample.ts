import type { RandomSource } from '../random.ts';
import { best, impossible, unsolved } from './extremes.ts';
import { evaluateForm, scaleForm, variableForm } from './forms.ts';
import type { Region } from './model.ts';
import { prepare } from './prepare.ts';

/**
 * A random possible history: one variable after the other, in random order, takes a value between what is
 * still possible for it (often one of the two ends, where extremes live). Reaches every history; not uniform.
 * For tests and demonstrations.
 *
 * A possible history is kept in hand all along. A value that leaves nothing possible, be it only by rounding
 * where variables hang together, is given up for the one in that history.
 *
 * @throws Refusal `region.impossible`, `region.unsolved`
 */
export function sampleRegion(region: Region, random: RandomSource): number[] {
  const order = region.variables.map((_, i) => [random.next(), i] as const).sort((a, b) => a[0] - b[0]);
  const first = best(prepare(region), { constant: 0, terms: [] });
  if (!first) throw impossible(region);
  if (!first.witness) throw unsolved(region);
  let inHand = first.witness;
  let now: Region = region;
  for (const [, v] of order) {
    const high = best(prepare(now), variableForm(v));
    const low = best(prepare(now), scaleForm(variableForm(v), -1));
    const where = random.next();
    const share = where < 0.2 ? 0 : where > 0.8 ? 1 : random.next();
    if (!high || !low) return [...inHand];
    const { low: least, high: most, integer } = now.variables[v]!;
    const between = -low.value + share * (high.value + low.value);
    const value = Math.min(most, Math.max(least, integer ? Math.round(between) : between)) || 0;
    const next = settle(now, v, value);
    const witness = best(prepare(next), { constant: 0, terms: [] })?.witness;
    if (witness && keepsAll(region, witness)) {
      now = next;
      inHand = witness;
    } else now = settle(now, v, inHand[v]!);
  }
  return [...inHand];
}

const settle = (region: Region, v: number, value: number): Region => ({
  ...region,
  variables: region.variables.map((w, i) => (i === v ? { ...w, low: value, high: value } : w)),
});

/** Rounding may add up from one settled value to the next: what is kept in hand is held against the region itself. */
const keepsAll = (region: Region, x: readonly number[]): boolean =>
  region.constraints.every((c) => {
    const sum = evaluateForm({ constant: 0, terms: c.terms }, x);
    const room = 2e-6 * Math.max(1, ...c.terms.map(([, k]) => Math.abs(k)));
    return sum >= c.low - room && sum <= c.high + room;
  });
