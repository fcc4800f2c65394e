import type { Provenance } from '../../foundation/provenance.ts';
import type { Step } from '../../foundation/working.ts';
import type { TeardownDocument } from '../document.ts';
import type { TeardownAnswer } from '../model.ts';
import { type Quoted, RIVET_LENGTH } from '../quote/index.ts';

const ESTIMATE: Provenance = {
  source: 'Three-point estimating (PERT)',
  place: 'mean (a + 4m + b)/6; beta with α + β = 6, variance (μ − a)(b − μ)/7',
  known: 'second-hand',
};
const FINDINGS: Provenance = { source: 'common practice of estimating: findings in two stages', known: 'memory' };

/** The steps behind cost, hours, bound, finish and contingency. */
export function workingOf(document: TeardownDocument, answer: TeardownAnswer, priced: Quoted | null): Step[] {
  return [
    ...ofPlan(document, answer),
    ...ofSchedule(answer),
    ...ofShopping(answer),
    ...ofQuote(document, answer, priced),
  ];
}

function ofPlan({ floor }: TeardownDocument, { plan }: TeardownAnswer): Step[] {
  const { least, setups, extras } = plan;
  const rate = floor ? `${floor.hour_cents} cents an hour` : 'one cent a minute: no floor is given';
  const chosen = extras.filter((e) => e.chosen);
  return [
    {
      symbol: 'C',
      meaning: 'Least teardown, there and back, with what it is expected to spoil',
      formula: `Σ hands × ${rate} + fasteners + chance × price of a spoiled hole, over ${least.steps.length} steps`,
      value: least.cost_cents,
      unit: 'cents',
      provenance: ESTIMATE,
    },
    {
      symbol: 'B',
      meaning: least.proven ? 'No teardown costs less: proven' : 'No teardown costs less than this: all that is proven',
      formula: 'bound of the search over all ways',
      value: least.bound_cents,
      unit: 'cents',
    },
    {
      symbol: 'T',
      meaning: 'Hands of the least teardown',
      formula: 'Σ (a + 4m + b)/6 × persons',
      value: least.minutes,
      unit: 'min',
    },
    {
      symbol: 'S',
      meaning: `${setups.flips} turns of the wing and ${setups.toolChanges} changes of tool`,
      formula: 'turns × time of a turn + changes × time of a change, means',
      value: setups.minutes,
      unit: 'min',
    },
    {
      symbol: 'E',
      meaning: 'What is expected to be saved by looks and jobs that are done because access is open',
      formula: `Σ over ${chosen.length} chosen`,
      value: chosen.reduce((s, e) => s + e.saves_cents, 0),
      unit: 'cents',
    },
  ];
}

function ofSchedule({ schedule }: TeardownAnswer): Step[] {
  if (!schedule) return [];
  const { finish } = schedule;
  return [
    {
      symbol: 'M',
      meaning: 'End of the schedule, from midnight of the first day',
      formula: 'last end',
      value: schedule.end_min,
      unit: 'min',
    },
    {
      symbol: 'LB',
      meaning: 'No schedule on this floor ends earlier',
      formula: 'greatest of the bounds',
      value: schedule.bound_min,
      unit: 'min',
    },
    ...(finish
      ? (
          [
            ['P50', 'Day by which half of the runs are finished', finish.p50],
            ['P80', 'Day by which eight in ten are finished', finish.p80],
          ] as const
        ).map(
          ([symbol, meaning, value]): Step => ({
            symbol,
            meaning,
            formula: `${finish.runs} runs, seed ${finish.seed}; each time from its beta curve, times one shared cause`,
            value,
            unit: 'days',
            provenance: ESTIMATE,
          }),
        )
      : []),
  ];
}

function ofShopping({ shopping }: TeardownAnswer): Step[] {
  const rivets = shopping.lines.filter((l) => l.kind === 'solid_rivet');
  if (rivets.length === 0) return [];
  return [
    {
      symbol: 'L',
      meaning: 'Length of a solid rivet',
      formula: 'grip + 1.5 D, up to the next length that is made',
      value: rivets.map((l) => `${l.code}: ${Math.round((l.length_mm ?? 0) * 100) / 100} mm`).join('; '),
      unit: '',
      provenance: RIVET_LENGTH,
    },
  ];
}

function ofQuote({ chance, floor }: TeardownDocument, { quote }: TeardownAnswer, priced: Quoted | null): Step[] {
  if (!quote || !priced || !floor) return [];
  const draws = `${chance.runs} runs, seed ${chance.seed}`;
  return [
    {
      symbol: 'H',
      meaning: 'Hours of all hands, from one in ten to nine in ten, all steps good or bad at once',
      formula: `Σ quantiles of the beta curve, with the shared cause exp(±1.2816 × ${chance.common})`,
      value: quote.hours,
      unit: 'h',
      provenance: ESTIMATE,
    },
    {
      symbol: 'Hm',
      meaning: `Hours of all hands on the mean; standard deviation ${Math.round(Math.sqrt(priced.hours.variance_h2) * 10) / 10} h without the shared cause`,
      formula: 'Σ (a + 4m + b)/6 × persons',
      value: priced.hours.mean_h,
      unit: 'h',
      provenance: ESTIMATE,
    },
    {
      symbol: 'K',
      meaning: 'Base, without findings',
      formula: 'Σ lines of the base',
      value: quote.baseTotal,
      unit: 'cents',
    },
    ...(
      [
        ['F50', 'half', quote.contingency.p50],
        ['F80', 'eight in ten', quote.contingency.p80],
      ] as const
    ).map(
      ([symbol, share, value]): Step => ({
        symbol,
        meaning: `What findings add at most in ${share} of the runs`,
        formula: `${draws}: each of ${quote.ifFound.length} findings comes with its chance, then costs by its three points`,
        value,
        unit: 'cents',
        provenance: FINDINGS,
      }),
    ),
    ...(
      [
        ['Q50', 'half', priced.total.p50],
        ['Q80', 'eight in ten', priced.total.p80],
      ] as const
    ).map(
      ([symbol, share, value]): Step => ({
        symbol,
        meaning: `Whole sum in ${share} of the runs at most`,
        formula: `${draws}: hours × shared cause × ${floor.hour_cents} + other sums, evenly between their ends + findings`,
        value,
        unit: 'cents',
        provenance: ESTIMATE,
      }),
    ),
    {
      symbol: 'R',
      meaning: 'Range of the quote',
      formula: 'low ends of base and storage to their high ends with F80',
      value: quote.range,
      unit: 'cents',
    },
  ];
}
