import { byLifeCurve, type CycleDamage, damagePerHour, sequenceDamage } from './damage.ts';
import type { UsageDocument } from './document.ts';
import { lifeCurveOf } from './life-curves.ts';
import type { StressSpectrum } from './model.ts';
import { byPowerLaw, MIDDLE_SLOPE, SLOPES } from './power-law.ts';
import { sequenceOf, sequenceShapeOf } from './sequence.ts';
import { shapeOf, spectrumOf } from './spectrum.ts';

const LEVELS = [0.8, 0.9, 1.1, 1.2];

/** One assumption, and the damage per hour of each use under it, up to a constant. */
export interface Trial {
  readonly tried: string;
  readonly damage: ReadonlyMap<string, number>;
}
export interface Comparison {
  readonly gives: 'lives' | 'ratios';
  readonly spectra: ReadonlyMap<string, StressSpectrum>;
  /** Damage by the life curve; null where no stress is known. */
  readonly byCurve: ReadonlyMap<string, number> | null;
  /** By the middle slope; with a sequence drawn where ratios need it, the harsher of its bands and that sequence. */
  readonly middle: Trial;
  readonly middleCounted: boolean;
  readonly trials: readonly Trial[];
  /** Damage by the counted sequence; null where none was drawn. */
  readonly counted: ReadonlyMap<string, number> | null;
  /** The harsher of bands and counted sequence, that lives and ratios rest on; null where no stress is known. */
  readonly inForce: ReadonlyMap<string, number> | null;
  /** Damage of a cycle as the shares are made of it. */
  readonly each: CycleDamage;
}

type ByUse = ReadonlyMap<string, number>;
const harsher = (a: ByUse, b: ByUse | null): ByUse =>
  new Map([...a].map(([use, x]) => [use, Math.max(x, b?.get(use) ?? 0)] as const));
const apart = (bands: ByUse, counted: ByUse): Trial[] => [
  { tried: 'tables one by one', damage: bands },
  { tried: 'counted flight by flight', damage: counted },
];

/** Damage of every use by the life curve, by power laws, and by the life curve at other stress levels. */
export function compare(d: UsageDocument): Comparison {
  const known = d.place.stress.as !== 'unknown';
  const curve = lifeCurveOf(d);
  const spectra = new Map(d.uses.map((u) => [u.use, (known ? spectrumOf : shapeOf)(d, u.use)]));
  const under = (damage: CycleDamage) =>
    new Map([...spectra].map(([use, s]) => [use, damagePerHour(s.bands, damage)] as const));
  const highest = Math.max(...[...spectra.values()].flatMap((s) => s.bands.map((b) => b.max_MPa)));
  const power = (m: number) => byPowerLaw(m, curve.a3, highest);
  const slope = (m: number): Trial => ({ tried: `slope ${m}`, damage: under(power(m)) });
  const level = (k: number): Trial => ({
    tried: `stress ${k < 1 ? '−' : '+'}${Math.round(Math.abs(k - 1) * 100)} %`,
    damage: under(byLifeCurve(curve, k)),
  });
  const byCurve = known ? under(byLifeCurve(curve)) : null;
  const { sequence } = d;
  const drawn = (damage: CycleDamage) =>
    new Map(
      d.uses.map(({ use }) => {
        const s = (known ? sequenceOf : sequenceShapeOf)(d, use, sequence!);
        return [use, sequenceDamage(s, damage)] as const;
      }),
    );
  const counted = known && sequence ? drawn(byLifeCurve(curve)) : null;
  const inForce = byCurve && harsher(byCurve, counted);
  const bands = slope(MIDDLE_SLOPE);
  const needed = sequence && (!inForce || [...inForce.values()].some((x) => x === 0));
  const middleDrawn = needed ? drawn(power(MIDDLE_SLOPE)) : null;
  const damages = byCurve && [...byCurve.values()].some((x) => x > 0);
  return {
    gives: known ? 'lives' : 'ratios',
    spectra,
    byCurve,
    middle: { ...bands, damage: harsher(bands.damage, middleDrawn) },
    middleCounted: middleDrawn !== null,
    trials: [
      ...SLOPES.map(slope),
      ...(known ? LEVELS.map(level) : []),
      ...(counted && byCurve ? apart(byCurve, counted) : !known && middleDrawn ? apart(bands.damage, middleDrawn) : []),
    ],
    counted,
    inForce,
    each: damages ? byLifeCurve(curve) : power(MIDDLE_SLOPE),
  };
}
