import type { Comparison } from './compare.ts';
import type { UsageDocument } from './document.ts';
import { cyclesToFailure } from './life-curve.ts';
import { lifeCurveOf } from './life-curves.ts';
import type { UsageAnswer } from './model.ts';
import { MIDDLE_SLOPE, SLOPES } from './power-law.ts';
import type { Ratio } from './ratios.ts';
import { SCATTER_FACTORS } from './scatter.ts';

/** Beyond so many cycles the handbook's tests end. */
const DATA_END = 1e8;
const DATA_BEGIN = 1e3;
const NOTABLE = 0.1;
/** Too few flights for their rare loads: the damage of a hundred or two moves by a tenth and more with the seed. */
const FEW_FLIGHTS = 500;
/** More than a century without a stop: no part has flown it. */
const BEYOND_ALL_H = 1_000_000;
/** Uses as a sentence names them: by title, where they have one. */
function several(d: UsageDocument, uses: readonly string[]): string {
  const titles = uses.map((use) => d.uses.find((u) => u.use === use)?.title ?? use.replaceAll('_', ' '));
  return titles.map((t) => (/^[A-Z][a-z]/.test(t) ? t[0]!.toLowerCase() + t.slice(1) : t)).join(', ');
}

/** Sentences that stand beside the answer: where the method stops, and what was assumed. */
export function warningsOf(d: UsageDocument, c: Comparison, ratios: readonly Ratio[], a: UsageAnswer): string[] {
  return [
    ...ofCurve(d, c),
    ...ofLives(d, a),
    ...ofRatios(d, c, ratios),
    ...ofStress(d),
    ...ofLoads(d),
    ...ofHours(d, a),
  ];
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
      `By this curve there is no damage in ${several(d, none)}: every cycle lies under its run-out stress, under which small cycles vanish in this fit. No life is given there.`,
    );
  else if (curve.a4_MPa > 0)
    out.push('Cycles under the run-out stress of this curve count nothing; in a real part they may still do harm.');
  else out.push('This curve has no run-out stress: every small cycle damages, along a line that no test has reached.');
  const { known } = curve.from;
  if (known === 'memory' || known === 'second-hand')
    out.push(
      `The constants of this curve are ${known === 'memory' ? 'from memory' : 'second-hand'}: read ${[curve.from.source, curve.from.place].filter(Boolean).join(', ')} before a life by them decides anything.`,
    );
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
      `More than a tenth of the damage of ${several(d, beyond)} is by cycles that last beyond 100 million times, where the tests of such curves end.`,
    );
  return out;
}

/** What the lives are worth as promises. */
function ofLives(d: UsageDocument, a: UsageAnswer): string[] {
  if (a.gives === 'ratios') return [];
  const out: string[] = [];
  const endless = a.uses.filter((u) => (u.safeLife_h ?? 0) > BEYOND_ALL_H).map((u) => u.use);
  if (endless.length > 0)
    out.push(
      `The safe life in ${several(d, endless)} is longer than anything that ever flew: it says that this place hardly tires by this curve, and promises nothing.`,
    );
  const { value, from } = SCATTER_FACTORS.analysis;
  if (d.life.scatter_factor.value < value)
    out.push(
      `A life by analysis is divided by ${value} in ${from.source}, ${from.place} (second-hand); the scatter factor of ${d.life.scatter_factor.value} is softer.`,
    );
  return out;
}

const minus = (x: number): string => String(x).replace('-', '−');
function ofStress(d: UsageDocument): string[] {
  const s = d.place.stress;
  if (s.as === 'unknown' || s.ground_at_1g_MPa * (s.ground_per_g_MPa ?? 0) >= 0) return [];
  return [
    `On the ground the stress at 1 g and the stress of each further g have opposite signs (${minus(s.ground_at_1g_MPa)} and ${minus(s.ground_per_g_MPa ?? 0)} MPa): a hard landing then relieves the place. The weight of a wing presses harder instead; check the sign.`,
  ];
}

function ofRatios(d: UsageDocument, c: Comparison, ratios: readonly Ratio[]): string[] {
  if (!c.byCurve) return [];
  const middle = ratios.filter((r) => r.by === 'middle slope').map((r) => r.use);
  const hardest = ratios.filter((r) => r.by === 'hardest slope').map((r) => r.use);
  return [
    ...(middle.length > 0
      ? [
          `What an hour of ${several(d, middle)} counts is by a power law of slope ${MIDDLE_SLOPE}, for the curve sees no damage there.`,
        ]
      : []),
    ...(hardest.length > 0
      ? [
          `By this curve there is no damage in ${several(d, [d.reference_use])}, which an hour is measured by, but in ${several(d, hardest)}: what an hour of that counts is the highest of the power laws tried. Take a use that damages as the reference.`,
        ]
      : []),
  ];
}

function ofLoads(d: UsageDocument): string[] {
  const out: string[] = [];
  if (d.sequence && d.sequence.flights < FEW_FLIGHTS)
    out.push(
      `The sequence is short, ${d.sequence.flights} of ${FEW_FLIGHTS} flights: rare loads may be missing from it, or weigh too much. Draw more.`,
    );
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
  if (d.uses.some((u) => u.loads.some(downOnly)))
    out.push('A table of loads in flight has no upward levels: nothing pulls harder than 1 g by it.');
  const thin = d.uses.filter(
    (u) => u.speed_m_per_s !== undefined && u.density_kg_per_m3 === undefined && u.loads.some(byAir),
  );
  if (thin.length > 0)
    out.push(
      `No density of the air is stated for ${several(
        d,
        thin.map((u) => u.use),
      )}: that of sea level is taken.`,
    );
  const touching = d.uses.filter((u) => (u.landings_per_flight ?? 1) > 1);
  if (touching.length > 0)
    out.push(
      `More than one landing a flight in ${several(
        d,
        touching.map((u) => u.use),
      )}: ground-air-ground is counted once a flight. Where the wheels carry the aircraft each time that is too soft; state the flight as shorter.`,
    );
  return out;
}
/** Loads in flight that are given downward alone. */
const downOnly = (l: UsageDocument['uses'][number]['loads'][number]): boolean =>
  'load' in l && (l.load === 'gust' || l.load === 'manoeuvre') && !l.up && l.down !== undefined;
const byAir = (l: UsageDocument['uses'][number]['loads'][number]): boolean =>
  l.as === 'gust_velocity' || ('per' in l && l.per === 'nautical_mile');

function ofHours(d: UsageDocument, a: UsageAnswer): string[] {
  const assumed = a.equivalent?.byUse.filter((u) => u.assumed && u.flown_h.high > 0).map((u) => u.use) ?? [];
  return assumed.length > 0
    ? [
        `No loads are known for ${several(d, assumed)}: such hours count as the hardest known use, ${several(d, [a.hardest])}.`,
      ]
    : [];
}
