import { eachRainflow, peaksOnly, sequenceOf } from '../../usage/index.ts';
import type { GrowthDocument } from '../document.ts';
import { type CycleKernel, growCycleByCycle, type KernelInput } from '../integrate/index.ts';
import type { CycleSequence, GrowthCurve } from '../model.ts';
import { harm } from './by-use.ts';
import { type Life, lifeBySequence, sequenceGiven } from './lives.ts';
import { placed } from './placed.ts';
import { carriedBy, type Problem } from './problem.ts';

/** The life with interaction, and the one of the same cycles without it. */
export interface Beside {
  readonly withIt: GrowthCurve;
  /** Without it, from any size. Null where the law is no pure power: then the cycles an hour stand for it. */
  readonly life: Life | null;
  readonly without: GrowthCurve | null;
  readonly cycles: number;
}

/** So many cycles are counted at most: a page is not kept waiting. A faster doer counts further. */
const MOST = 1_000_000;
const MOST_BY_KERNEL = 60_000_000;

/** Cycle by cycle with the interaction that is asked for; null where none is. */
export function besideOf(d: GrowthDocument, p: Problem, kernel: CycleKernel | undefined): Beside | null {
  if (d.interaction.as === 'none') return null;
  const sequence = orderOf(d);
  const at = placed(p.form, p.first);
  const fast = kernel && at.form.tips === 2 ? kernelFor(d, p, kernel) : null;
  const counted = withoutTheSmallest(p, sequence);
  const withIt = growCycleByCycle(
    at.form,
    p.law,
    counted,
    at.size,
    { margin: carriedBy(p).margin },
    {
      interaction: d.interaction,
      yield_MPa: p.strength.yield_MPa,
      most: fast ? MOST_BY_KERNEL : MOST,
      ...(fast ? { kernel: fast } : {}),
    },
  );
  const life = lifeBySequence(p, sequence);
  return { withIt, life, without: life?.(p.first, 0) ?? null, cycles: counted.max_MPa.length };
}

/**
 * Of many cycles those that matter: the smallest, which together hold less than a hundredth of the growth, are left out
 * of a count that is for information. Only under a pure power of K, where a cycle's share does not depend on the crack.
 */
function withoutTheSmallest({ law }: Problem, s: CycleSequence): CycleSequence {
  const { power } = law;
  if (!power || s.max_MPa.length < MANY) return s;
  const weights = s.max_MPa.map((max, i) =>
    max > 0 ? harm([{ max_MPa: max, min_MPa: s.min_MPa[i]!, perHour: 1 }], power) : 0,
  );
  const rising = weights.slice().sort();
  let left = SMALLEST * rising.reduce((t, w) => t + w, 0);
  let least = 0;
  while (left > 0 && least < rising.length) left -= rising[least++]!;
  const from = rising[least - 1]!;
  const kept = (_: number, i: number) => weights[i]! >= from;
  return { max_MPa: s.max_MPa.filter(kept), min_MPa: s.min_MPa.filter(kept), hours: s.hours };
}
const MANY = 10_000;
const SMALLEST = 0.01;

/** The doer with the figures of the place and the law; null where it does not know them. */
function kernelFor(d: GrowthDocument, p: Problem, run: CycleKernel) {
  const g = d.geometry;
  const { power } = p.law;
  if (g.shape !== 'hole_corner' || g.bending_ratio !== 0 || d.factors?.length || p.law.law !== 'walker' || !power)
    return null;
  const m = -Math.log(power.weight(HALF)) / Math.log(2);
  if (power.weight(-1) !== 1) return null;
  const { shape, width_mm, thickness_mm, diameter_mm, cracks } = g;
  const geometry: KernelInput['geometry'] = { shape, width_mm, thickness_mm, diameter_mm, cracks };
  return { run, geometry, law: { c: power.c, n: power.n, m } };
}
const HALF = 0.5;

/** Cycles in order: as given, or counted by rainflow from flights drawn, in the order in which they close. */
function orderOf(d: GrowthDocument): CycleSequence {
  const { loading } = d;
  if (loading.as === 'constant')
    return {
      max_MPa: Float64Array.of(loading.max_MPa),
      min_MPa: Float64Array.of(loading.min_MPa),
      hours: 1 / loading.per_hour,
    };
  return sequenceGiven(d) ?? drawn(d);
}

/** Flights are mixed by turns: so many of each use, over and over, so that no use comes all at once. */
const TURNS = 20;
function drawn({ loading }: GrowthDocument): CycleSequence {
  if (loading.as !== 'usage' || !loading.usage.sequence) throw new Error('a loading without order was not refused');
  const { usage, mix } = loading;
  const { seed, flights } = usage.sequence!;
  const flown = mix
    .filter((m) => m.share > 0)
    .map((m) => ({ use: m.use, share: m.share / usage.uses.find((u) => u.use === m.use)!.flight_h }));
  const all = flown.reduce((t, m) => t + m.share, 0);
  const points: number[] = [];
  let hours = 0;
  const drawnOf = flown.map(() => 0);
  for (let turn = 1; turn <= TURNS; turn++)
    for (const [i, m] of flown.entries()) {
      const until = Math.round((flights * m.share * turn) / (all * TURNS));
      const now = until - drawnOf[i]!;
      if (now === 0) continue;
      drawnOf[i] = until;
      const made = sequenceOf(usage, m.use, { seed: (seed + turn) % 2 ** 32, flights: now });
      for (const p of made.turningPoints_MPa) points.push(p);
      hours += made.hours;
    }
  return counted(peaksOnly(points), hours);
}

/** A half cycle that stays open counts as a whole one: the harsher. */
function counted(points: ArrayLike<number>, hours: number): CycleSequence {
  const max: number[] = [];
  const min: number[] = [];
  eachRainflow(points, (a, b) => {
    max.push(Math.max(a, b));
    min.push(Math.min(a, b));
  });
  return { max_MPa: Float64Array.from(max), min_MPa: Float64Array.from(min), hours };
}
