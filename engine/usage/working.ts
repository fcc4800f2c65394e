import { MPA_PER_KSI } from '../foundation/convert.ts';
import type { Provenance } from '../foundation/provenance.ts';
import type { Step } from '../foundation/working.ts';
import type { Comparison } from './compare.ts';
import { curvesOf, milesPerHour } from './curves.ts';
import type { UsageDocument, UseLoads } from './document.ts';
import { gustResponse, SEA_LEVEL_DENSITY } from './gust.ts';
import { lifeCurveOf } from './life-curves.ts';
import type { UsageAnswer, UseDamage } from './model.ts';
import { oncePerFlight } from './once-per-flight.ts';
import type { Ratio } from './ratios.ts';
import { CYCLE_COUNTING, DAMAGE_SUM, DISCRETE_GUST, MILES, SKELETON } from './sources.ts';
import { endsOfFlight } from './spectrum.ts';
import { shapeLine, stressLine } from './stress-line.ts';

const step = (
  symbol: string,
  meaning: string,
  formula: string,
  value: Step['value'],
  unit: Step['unit'],
  provenance?: Provenance,
): Step => ({ symbol, meaning, formula, value, unit, ...(provenance ? { provenance } : {}) });

/** The steps from loads to equivalent hours, use by use. */
export function workingOf(d: UsageDocument, c: Comparison, ratios: readonly Ratio[], a: UsageAnswer): Step[] {
  return [...curveSteps(d, c), ...a.uses.flatMap((u, i) => useSteps(d, d.uses[i]!, u, ratios[i]!, c)), ...hourSteps(a)];
}

function curveSteps(d: UsageDocument, c: Comparison): Step[] {
  const curve = lifeCurveOf(d);
  const { a1, a2, a3 } = curve;
  const a4 = Math.round((curve.a4_MPa / MPA_PER_KSI) * 1e6) / 1e6;
  const said = `log10 N = ${a1} − ${-a2} log10(Seq − ${a4}), stresses in ksi`;
  return [
    step('Seq', 'stress of a cycle from zero that is as hard', `Smax (1 − R)^${a3}`, curve.name, '', curve.from),
    ...(c.byCurve
      ? [step('N', 'cycles to failure', said, `run-out at and under ${a4} ksi`, '', curve.from)]
      : [step('N', 'cycles to failure, up to a constant', 'Seq^−m', 'm from 3 to 6', '', curve.from)]),
    step('A', 'scatter factor on a mean life', 'stated', d.life.scatter_factor.value, '', d.life.scatter_factor.from),
  ];
}

function loadSteps(d: UsageDocument, u: UseLoads, title: string): Step[] {
  const steps: Step[] = [];
  const a = d.aeroplane;
  if (u.loads.some((l) => l.as === 'gust_velocity')) {
    const response = gustResponse(
      {
        wing_loading_Pa: a.wing_loading_Pa!,
        mean_chord_m: a.mean_chord_m!,
        lift_slope_per_rad: a.lift_slope_per_rad!,
      },
      u.speed_m_per_s!,
      u.density_kg_per_m3 ?? SEA_LEVEL_DENSITY,
    );
    steps.push(
      step('μ', `mass ratio, ${title}`, '2 (W/S) / (ρ C a g)', response.mu, '', DISCRETE_GUST),
      step('Kg', `gust alleviation, ${title}`, '0.88 μ / (5.3 + μ)', response.alleviation, '', DISCRETE_GUST),
      step(
        'Δn',
        `increment by 10 m/s, ${title}`,
        'Kg Ude V a / (498 W/S)',
        10 * response.perVelocity,
        'g',
        DISCRETE_GUST,
      ),
    );
  }
  if (u.loads.some((l) => 'per' in l && l.per === 'nautical_mile'))
    steps.push(step('nm/h', `nautical miles an hour, ${title}`, 'V √(ρ0 / ρ)', milesPerHour(u), '', MILES));
  return steps;
}

function useSteps(d: UsageDocument, u: UseLoads, r: UseDamage, ratio: Ratio, c: Comparison): Step[] {
  const title = u.title ?? u.use;
  const curves = curvesOf(d, u.use);
  const line = (c.byCurve ? stressLine : shapeLine)(d.place.stress);
  const ends = endsOfFlight(curves, line, u.flight_h);
  const unit = c.byCurve ? 'MPa' : '';
  const of = c.byCurve ? '' : ', in stresses at 1 g';
  const once = oncePerFlight(
    curves.filter((x) => !x.ground),
    'up',
    u.flight_h,
  );
  const steps = [
    ...loadSteps(d, u, title),
    step('Δn1', `increment met once per flight, ${title}`, `Σ E(Δn) · ${u.flight_h} h = 1`, once, 'g', SKELETON),
    step(
      'S1',
      `highest stress met once per flight, ${title}${of}`,
      'S(1 + Δn1)',
      ends.highest,
      unit,
      d.place.stress.from,
    ),
    step('S0', `lowest stress on the ground, ${title}${of}`, 'once per flight', ends.lowest, unit, d.place.stress.from),
    step('n', `cycles an hour, ${title}`, 'Σ bands', r.cyclesPerHour, '1/h', SKELETON),
  ];
  if (r.perHour !== null) steps.push(step('D', `damage an hour, ${title}`, 'Σ n / N', r.perHour, '1/h', DAMAGE_SUM));
  for (const s of r.shares)
    steps.push(step('share', `of ${s.load.replaceAll('_', '-')} in it, ${title}`, 'D of the load / D', s.share, ''));
  if (r.sequencePerHour !== null)
    steps.push(
      step(
        'D',
        `damage an hour, ${title}, counted flight by flight`,
        'Σ count / N',
        r.sequencePerHour,
        '1/h',
        CYCLE_COUNTING,
      ),
    );
  if (r.meanLife_h !== null)
    steps.push(
      step('L', `mean life, ${title}`, r.sequencePerHour === null ? '1 / D' : '1 / the greater D', r.meanLife_h, 'h'),
      step('L/A', `safe life, ${title}`, 'mean life / scatter factor', r.safeLife_h!, 'h', d.life.scatter_factor.from),
    );
  steps.push(
    step('r', `hours of ${d.reference_use} in an hour of ${title}`, ratioBy(ratio.by, c), r.ratio, ''),
    step('r', 'the same over all slopes and stress levels tried', 'least and greatest', r.ratioAcross, ''),
  );
  return steps;
}
function ratioBy(by: Ratio['by'], c: Comparison): string {
  if (by === 'life curve' && c.counted) return 'greater D / greater D of the reference';
  if (by === 'middle slope' && c.middleCounted)
    return `${RATIO_BY[by]}, each the greater of bands and counted sequence`;
  return RATIO_BY[by];
}
const RATIO_BY = {
  'life curve': 'D / D of the reference',
  'middle slope': 'Σ n Seq^4.5 / that of the reference',
  'hardest slope': 'greatest of Σ n Seq^m / that of the reference, m from 3 to 6',
} as const;

/** The steps from hours flown to equivalent hours: the last of the working. */
export function hourSteps({ equivalent: e, reference }: UsageAnswer): Step[] {
  if (!e) return [];
  return [
    ...e.byUse.map((u) =>
      step(
        'H',
        `hours flown, ${u.use}${u.assumed ? ', loads not known: as the hardest use' : ''}`,
        `counted ${digits(u.ratio)} times`,
        u.flown_h,
        'h',
      ),
    ),
    step('H', 'hours flown in all', 'Σ H over all divisions that agree', e.flown_h, 'h'),
    step('He', `the same in hours of ${reference}`, 'Σ r H over all divisions that agree', e.equivalent_h, 'h'),
    ...(e.across_h
      ? [step('He', 'the same over every slope and stress level tried', 'least and greatest', e.across_h, 'h')]
      : []),
    ...(e.used ? [step('He A / L', 'share of the safe life of the reference use', 'He / safe life', e.used, '')] : []),
  ];
}
const digits = (x: number): number => Number(x.toPrecision(4));
