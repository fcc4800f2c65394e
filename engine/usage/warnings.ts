import type { Comparison } from './compare.ts';
import type { UsageDocument } from './document.ts';
import { cyclesToFailure } from './life-curve.ts';
import { lifeCurveOf } from './life-curves.ts';
import type { UsageAnswer } from './model.ts';
import { MIDDLE_SLOPE, SLOPES } from './power-law.ts';
import type { Ratio } from './ratios.ts';

/** Beyond so many cycles the handbook's tests end. */
const DATA_END = 1e8;
const DATA_BEGIN = 1e3;
const NOTABLE = 0.1;
const several = (names: readonly string[]): string => names.join(', ');

/** Sentences that stand beside the answer: where the method stops, and what was assumed. */
export function warningsOf(d: UsageDocument, c: Comparison, ratios: readonly Ratio[], a: UsageAnswer): string[] {
  return [...ofCurve(d, c), ...ofRatios(d, c, ratios), ...ofLoads(d), ...ofHours(a)];
}

function ofCurve(d: UsageDocument, c: Comparison): string[] {
  if (!c.byCurve)
    return [
      `No stress with a source is known at this place: only ratios between uses are given, by power laws of slope ${SLOPES[0]} to ${SLOPES.at(-1)}, ${MIDDLE_SLOPE} in the middle; no life.`,
    ];
  const curve = lifeCurveOf(d);
  const out: string[] = [];
  const none = [...c.inForce!].filter(([, x]) => x === 0).map(([use]) => use);
  if (none.length > 0)
    out.push(
      `By this curve ${several(none)} does no damage: every cycle lies under its run-out stress, under which small cycles vanish in this fit. No life is given for it.`,
    );
  else if (curve.a4_MPa > 0)
    out.push('Cycles under the run-out stress of this curve count nothing; in a real part they may still do harm.');
  else out.push('This curve has no run-out stress: every small cycle damages, along a line that no test has reached.');
  const bands = [...c.spectra.values()].flatMap((s) => s.bands);
  const lives = (b: (typeof bands)[number]) => cyclesToFailure(curve, b.max_MPa, b.min_MPa);
  if (bands.some((b) => lives(b) < DATA_BEGIN))
    out.push(`The hardest cycles last fewer than ${DATA_BEGIN} times by this curve, where its tests do not reach.`);
  const beyond = [...c.spectra].flatMap(([use, s]) => {
    const far = s.bands.reduce((t, b) => t + (lives(b) > DATA_END ? b.perHour / lives(b) : 0), 0);
    return far > NOTABLE * c.byCurve!.get(use)! ? [use] : [];
  });
  if (beyond.length > 0)
    out.push(
      `More than a tenth of the damage of ${several(beyond)} is by cycles that last beyond 100 million times, where the tests of such curves end.`,
    );
  return out;
}

function ofRatios(d: UsageDocument, c: Comparison, ratios: readonly Ratio[]): string[] {
  if (!c.byCurve) return [];
  const middle = ratios.filter((r) => r.by === 'middle slope').map((r) => r.use);
  const hardest = ratios.filter((r) => r.by === 'hardest slope').map((r) => r.use);
  return [
    ...(middle.length > 0
      ? [
          `The ratio of ${several(middle)} is by a power law of slope ${MIDDLE_SLOPE}, for the curve sees no damage there.`,
        ]
      : []),
    ...(hardest.length > 0
      ? [
          `The reference use ${d.reference_use} does no damage by this curve, ${several(hardest)} does: its ratio is the highest of the power laws tried. Take a use that damages as the reference.`,
        ]
      : []),
  ];
}

function ofLoads(d: UsageDocument): string[] {
  const out: string[] = [];
  const gusts = d.uses
    .flatMap((u) => u.loads)
    .filter((l) => l.as !== 'turbulence' && l.as !== 'gust_velocity' && l.load === 'gust');
  if (
    d.aeroplane.gust_limit_increment === undefined &&
    gusts.some((l) => 'measure' in l && l.measure === 'share_of_limit')
  )
    out.push('No limit increment in gusts is stated: shares of it are taken of the upward limit in manoeuvres.');
  if (gusts.some((l) => 'up' in l && l.up && !l.down))
    out.push('A gust table has no downward levels: its cycles go from 1 g up only.');
  const thin = d.uses.filter(
    (u) => u.speed_m_per_s !== undefined && u.density_kg_per_m3 === undefined && u.loads.some(byAir),
  );
  if (thin.length > 0)
    out.push(`No density of the air is stated for ${several(thin.map((u) => u.use))}: that of sea level is taken.`);
  const touching = d.uses.filter((u) => (u.landings_per_flight ?? 1) > 1);
  if (touching.length > 0)
    out.push(
      `${several(touching.map((u) => u.use))} lands more than once a flight; ground-air-ground is counted once a flight. If the wheels carry the aircraft each time, state the flight as shorter.`,
    );
  return out;
}
const byAir = (l: UsageDocument['uses'][number]['loads'][number]): boolean =>
  l.as === 'gust_velocity' || ('per' in l && l.per === 'nautical_mile');

function ofHours(a: UsageAnswer): string[] {
  const assumed = a.equivalent?.byUse.filter((u) => u.assumed && u.flown_h.high > 0).map((u) => u.use) ?? [];
  return assumed.length > 0
    ? [`No loads are known for ${several(assumed)}: its hours count as the hardest known use, ${a.hardest}.`]
    : [];
}
