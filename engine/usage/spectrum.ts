import { curvesOf, type LevelCurve } from './curves.ts';
import type { UsageDocument } from './document.ts';
import type { LoadSource, StressBand, StressSpectrum } from './model.ts';
import { oncePerFlight } from './once-per-flight.ts';
import { type Cut, pairsOf } from './pairs.ts';
import { loadsOf } from './refusals.ts';
import { type StressLine, shapeLine, stressLine } from './stress-line.ts';

const band = (load: LoadSource, a: number, b: number, perHour: number): StressBand[] =>
  a === b ? [] : [{ load, max_MPa: Math.max(a, b), min_MPa: Math.min(a, b), perHour }];

/** Highest stress in flight and lowest on the ground that a flight meets on average. */
export function endsOfFlight(curves: readonly LevelCurve[], line: StressLine, flight_h: number) {
  const ends = (ground: boolean): [up: number, down: number] => {
    const those = curves.filter((c) => c.ground === ground);
    return [1 + oncePerFlight(those, 'up', flight_h), 1 - oncePerFlight(those, 'down', flight_h)];
  };
  return {
    highest: Math.max(line.flight(1), ...ends(false).map(line.flight)),
    lowest: Math.min(line.ground(1), ...ends(true).map(line.ground)),
  };
}

function spectrum(document: UsageDocument, use: string, line: StressLine, cut: Cut): StressSpectrum {
  const { flight_h } = loadsOf(document, use);
  const curves = curvesOf(document, use);
  const events = curves.flatMap((c) => {
    const stress = c.ground ? line.ground : line.flight;
    return pairsOf(c, cut).flatMap((p) => band(c.load, stress(1 + p.up), stress(1 - p.down), p.perHour));
  });
  const { highest, lowest } = endsOfFlight(curves, line, flight_h);
  return { use, flight_h, bands: [...events, ...band('ground_air_ground', highest, lowest, 1 / flight_h)] };
}

/**
 * Stress cycles per hour of a use, as bands.
 *
 * Occurrences between neighbouring levels act at the middle level; what passes the last level acts at it. Gust up and
 * gust down of equal frequency make a cycle, as do those of taxi and landing on the ground line; a manoeuvre makes one
 * with 1 g. Once per flight the stress goes from the lowest on the ground to the highest in flight that is met once
 * per flight.
 *
 * Not valid for a place that other loads work as well (flaps, propeller, pressure), or beyond the last level.
 *
 * @param cut how levels are cut into bands; as fine as the sum needs unless stated
 * @returns MPa and times per hour
 * @throws Refusal `usage.stress-unknown`, `usage.use-unknown` and what `curvesOf` refuses
 */
export const spectrumOf = (document: UsageDocument, use: string, cut: Cut = {}): StressSpectrum =>
  spectrum(document, use, stressLine(document.place.stress), cut);

/** The same with the stress at 1 g in flight taken as 1 MPa, for ratios. @throws Refusal as `curvesOf`, `usage.line-unfit` */
export const shapeOf = (document: UsageDocument, use: string, cut: Cut = {}): StressSpectrum =>
  spectrum(document, use, shapeLine(document.place.stress), cut);
