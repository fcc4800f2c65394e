import { SECONDS_PER_HOUR } from '../foundation/convert.ts';
import type { Day } from '../foundation/day.ts';
import { Refusal } from '../foundation/refusal.ts';
import { type Step, type Worked, worked } from '../foundation/working.ts';
import { type Flying, readFlying } from './flying.ts';
import type { TotalReading } from './intervals.ts';
import type { LeftAtEnd, Outlook, OutlookOptions, Percentiles, ReadingAge } from './model.ts';
import { GRID_PROVENANCE, HORIZON_YEARS, PRIOR_PROVENANCE } from './prior.ts';
import { readingAge } from './today.ts';
import { atRate, checkEnd, earlierArrival, laterArrival, percentiles } from './when.ts';

const RATES_ANSWERED = [25, 50, 100];

/**
 * When a limit will be reached, at this owner's flying rate.
 *
 * The flying is a gamma process whose rate and lumpiness are not known but weighed by the readings; the rate may
 * have changed within the record, and wanders. The two ends of the possible histories are answered apart: what
 * papers leave open is never given a chance.
 *
 * Not valid after a change of owner or use that the readings have not seen; not for hours booked on another meter.
 *
 * @param readings of one total, corrected for meter changes; one or more; landings where they were counted
 * @param day the day asked for, not before the last reading
 * @param worst what is left at the last reading on the worst of the possible histories
 * @param best the same on the best; the worst itself where the papers settle it
 * @returns days as P10, P50, P90 for both ends, the plain answer for chosen rates, and the age of the last reading
 * @throws Refusal `outlook.no-reading`, `outlook.reading-in-future`, `outlook.readings-run-backwards`,
 *   `outlook.too-much-flown`, `outlook.limit-missing`, `outlook.prior-invalid`, `outlook.rate-invalid`,
 *   `foundation.not-finite`
 * @see docs/methods/outlook.md
 */
export function outlook(
  readings: readonly TotalReading[],
  day: Day,
  worst: LeftAtEnd,
  best: LeftAtEnd = worst,
  options: OutlookOptions = {},
): Worked<Outlook> {
  return outlookOf(readFlying(readings, day, options), day, worst, best, options);
}

/** The same for flying that was read before: for several limits of one aircraft. */
export function outlookOf(
  flying: Flying,
  day: Day,
  worst: LeftAtEnd,
  best: LeftAtEnd = worst,
  options: OutlookOptions = {},
): Worked<Outlook> {
  checkEnd(worst);
  checkEnd(best);
  const rates = options.rates_h_per_year ?? RATES_ANSWERED;
  for (const r of rates)
    if (!(r >= 0 && r <= 8760))
      throw new Refusal('outlook.rate-invalid', {
        given: `${r} h a year`,
        allowed: '0 to 8760',
        remedy: 'Correct the rate',
      });
  const today = readingAge(flying.last.day, day, options.staleAfter_days);
  const low = percentiles(flying, worst);
  const high = sameEnd(worst, best) ? low : percentiles(flying, best);
  const treatAs = each(low, high, earlierArrival);
  const couldBecome = each(low, high, laterArrival);
  const value: Outlook = {
    today,
    rate: flying.rate,
    treatAs,
    couldBecome,
    spans: {
      papers: { from: treatAs.p50, to: couldBecome.p50 },
      flying: { from: treatAs.p10, to: treatAs.p90 },
      whole: { from: treatAs.p10, to: couldBecome.p90 },
    },
    atRates: rates.map((rate) => {
      const [a, b] = [atRate(flying, worst, rate), atRate(flying, best, rate)];
      return { rate_h_per_year: rate, treatAs: earlierArrival(a, b), couldBecome: laterArrival(a, b) };
    }),
  };
  return worked(value, steps(flying, worst, best, value), warnings(flying, day, worst, best, value));
}

const sameEnd = (a: LeftAtEnd, b: LeftAtEnd) => a === b || JSON.stringify(a) === JSON.stringify(b);
/** Nothing is softer than the worse side: where two ends in different units cross, the earlier day is in force. */
const each = (a: Percentiles, b: Percentiles, pick: typeof earlierArrival): Percentiles => ({
  p10: pick(a.p10, b.p10),
  p50: pick(a.p50, b.p50),
  p90: pick(a.p90, b.p90),
});

function warnings(flying: Flying, day: Day, worst: LeftAtEnd, best: LeftAtEnd, value: Outlook): string[] {
  const out: string[] = [];
  if (staleNote(value.today)) out.push(staleNote(value.today)!);
  if (flying.rate.basis === 'prior alone')
    out.push(
      'One reading only: the rate is assumed from common practice, not known. Ask the owner for an older reading.',
    );
  else if (flying.rate.basis === 'few readings and the prior')
    out.push('Three readings at most: the rate leans on common practice.');
  if (flying.rate.changed)
    out.push(`The habit seems to have changed between ${flying.rate.changed.from} and ${flying.rate.changed.to}.`);
  if (value.treatAs.p10.is === 'reached') out.push('Reached at the last reading.');
  else if (value.treatAs.p10.is === 'day' && value.treatAs.p10.day <= day)
    out.push('It may have been reached since the last reading. Read the meter before the next flight.');
  const landings = [worst, best].some((e) => typeof e.left_landings === 'number' || (e.counted?.perLanding ?? 0) > 0);
  if (landings && !flying.landingsKnown)
    out.push(`Landings are not in the readings: ${flying.landingsPerHour.toFixed(1)} landings an hour are assumed.`);
  out.push('The forecast holds while the flying goes on as it does now. A new owner or a new use makes it void.');
  return out;
}
const staleNote = (age: ReadingAge): string | null =>
  age.stale ? `The last reading is ${age.age_days} days old. Every figure is as of ${age.asOf}.` : null;

function steps(flying: Flying, worst: LeftAtEnd, best: LeftAtEnd, value: Outlook): Step[] {
  const { rate, prior, hours } = flying;
  const left = (e: LeftAtEnd) => {
    const parts = [
      typeof e.left_s === 'number' ? `${(e.left_s / SECONDS_PER_HOUR).toFixed(2)} h` : '',
      typeof e.left_landings === 'number' ? `${e.left_landings} landings` : '',
      e.counted ? `${e.counted.left} counted (${e.counted.perHour} an hour, ${e.counted.perLanding} a landing)` : '',
      e.onDay ? `until ${e.onDay}` : '',
    ];
    return parts.filter(Boolean).join(' or ');
  };
  const said = (p: Percentiles) =>
    [p.p10, p.p50, p.p90].map((a) => (a.is === 'not before' ? `not before ${a.year}` : a.day)).join(', ');
  const method = 'docs/methods/outlook.md';
  return [
    { symbol: 't0', meaning: 'last reading, as of', formula: 'readings', value: flying.last.day, unit: 'days' },
    { symbol: 'H0', meaning: 'total at the last reading', formula: 'readings', value: flying.last.total_s, unit: 's' },
    {
      symbol: 'n',
      meaning: 'intervals between readings that were used',
      formula: 'at most 40',
      value: hours.changed.length,
      unit: 'count',
    },
    {
      symbol: 'prior',
      meaning: 'hours a year before the readings speak: median',
      formula: `log-normal, spread ${prior.spread}, ${prior.idle_share} idle, ${prior.busy_share} in hire or instruction`,
      value: prior.median_h_per_year,
      unit: 'h',
      provenance: PRIOR_PROVENANCE,
    },
    {
      symbol: 'v',
      meaning: 'hours a year now, P10 to P90',
      formula: 'weights over rate, lumpiness and wander, passed through the intervals',
      value: { low: rate.h_per_year.p10, high: rate.h_per_year.p90 },
      unit: 'h',
      source: `${method}, equations 1 to 5`,
      provenance: GRID_PROVENANCE,
    },
    {
      symbol: 'w',
      meaning: 'season',
      formula: '1 + depth cos(2 pi (day - peak) / year)',
      value:
        rate.season === 'none shown'
          ? 'none shown'
          : `depth ${rate.season.depth}, peak on day ${rate.season.peakDayOfYear}`,
      unit: '',
      source: `${method}, equation 6`,
    },
    {
      symbol: 'left, worst',
      meaning: 'left at the last reading, worst history',
      formula: 'limit - total',
      value: left(worst),
      unit: '',
    },
    {
      symbol: 'left, best',
      meaning: 'left at the last reading, best history',
      formula: 'limit - total',
      value: left(best),
      unit: '',
    },
    {
      symbol: 'T, worst',
      meaning: 'reached by, with a chance of 10, 50, 90 %',
      formula: `P(T <= t) = sum of weight x Q(v t / b, left / b); no date beyond ${HORIZON_YEARS} years`,
      value: said(value.treatAs),
      unit: '',
      source: `${method}, equation 7`,
    },
    {
      symbol: 'T, best',
      meaning: 'the same on the best history',
      formula: 'the same',
      value: said(value.couldBecome),
      unit: '',
    },
  ];
}
