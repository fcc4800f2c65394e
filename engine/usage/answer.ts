import { type Known, weakestKnown } from '../foundation/provenance.ts';
import { type Worked, worked } from '../foundation/working.ts';
import { type Comparison, compare } from './compare.ts';
import { damageShares } from './damage.ts';
import type { UsageDocument, UseLoads } from './document.ts';
import { equivalentHours, wholeTables } from './equivalent.ts';
import { lifeCurveOf } from './life-curves.ts';
import type { UsageAnswer, UseDamage } from './model.ts';
import { pictured } from './pictured.ts';
import { type Ratio, ratiosOf, ratioUnder } from './ratios.ts';
import { readUsage } from './read.ts';
import { warningsOf } from './warnings.ts';
import { workingOf } from './working.ts';

/**
 * How hard each use is on the place, and what the hours flown come to.
 *
 * Exceedances become stress cycles, cycles become damage by the life curve and Miner's sum, damage becomes a mean life
 * (of the bands or of the counted sequence, whichever is the harsher), a safe life by the scatter factor, and a ratio to the reference use; hours flown are weighed by the ratios. Where no
 * stress with a source is at hand only ratios are given, by power laws.
 *
 * Not valid as an approval of any life: a mean life by small specimens, scaled by a factor, of one place.
 *
 * @param input a `usage/1` document, figures in any unit that their fields name
 * @returns the answer with its working and warnings
 * @throws Refusal what `readUsage` and `equivalentHours` refuse
 */
export function answerUsage(input: unknown): Worked<UsageAnswer> {
  const d = readUsage(input);
  const comparison = compare(d);
  const ratios = ratiosOf(comparison, d.reference_use);
  const uses = d.uses.map((u, i) => useDamage(d, u, comparison, ratios[i]!));
  const safe = uses.find((u) => u.use === d.reference_use)!.safeLife_h;
  const curve = lifeCurveOf(d);
  const sensitivity = comparison.trials.map((t) => ({
    tried: t.tried,
    ratios: d.uses.map(({ use }) => ({ use, ratio: ratioUnder(t, use, d.reference_use) })),
  }));
  const value: UsageAnswer = {
    title: d.title,
    subject: d.subject ?? null,
    invented: d.invented ?? false,
    gives: comparison.gives,
    reference: d.reference_use,
    uses,
    hardest: uses.reduce((a, b) => (b.ratio > a.ratio ? b : a)).use,
    sensitivity,
    curves: pictured(d),
    equivalent: equivalentHours(d, ratios, safe, wholeTables(sensitivity)),
    curve: { name: curve.name, from: curve.from },
    scatterFactor: d.life.scatter_factor,
    stressFrom: d.place.stress.from,
    known: weakestKnown([...uses.map((u) => u.known), d.life.scatter_factor.from.known]),
  };
  return worked(value, workingOf(d, comparison, ratios, value), warningsOf(d, comparison, ratios, value));
}

function useDamage(d: UsageDocument, u: UseLoads, c: Comparison, r: Ratio): UseDamage {
  const spectrum = c.spectra.get(u.use)!;
  const perHour = c.byCurve?.get(u.use) ?? null;
  const counted = c.counted?.get(u.use) ?? null;
  const harsher = c.inForce?.get(u.use) ?? 0;
  const meanLife_h = harsher > 0 ? 1 / harsher : null;
  return {
    use: u.use,
    title: u.title ?? u.use,
    flight_h: u.flight_h,
    perHour,
    shares: damageShares(spectrum, c.each),
    ratio: r.ratio,
    ratioAcross: r.across,
    sequencePerHour: counted,
    meanLife_h,
    safeLife_h: meanLife_h === null ? null : meanLife_h / d.life.scatter_factor.value,
    cyclesPerHour: spectrum.bands.reduce((t, b) => t + b.perHour, 0),
    known: knownOf(d, u),
  };
}

function knownOf(d: UsageDocument, u: UseLoads): Known {
  const made: Known[] = d.invented ? ['invented'] : [];
  const loads = u.loads.map((l) => l.from.known);
  return weakestKnown([
    ...made,
    ...loads,
    d.aeroplane.from.known,
    d.place.stress.from.known,
    lifeCurveOf(d).from.known,
  ]);
}
