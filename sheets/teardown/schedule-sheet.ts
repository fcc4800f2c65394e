import type { Day, teardown } from '../../engine/index.ts';
import { count, day as dayWords, number } from '../display.ts';
import { f, t } from '../frame.ts';
import { hoursCell, quantity, words } from '../measure.ts';
import type { Cell, KeyValueBlock, Sheet, Span, TableBlock } from '../model.ts';
import { workChart } from '../scenes/work-chart.ts';
import { type ChartJob, chartTable } from '../scenes/work-table.ts';
import { shownSteps } from '../working.ts';
import { targetWords } from './facts.ts';
import { dayAt, shiftMinutes } from './floor-days.ts';
import type { TeardownSheetInput } from './input.ts';
import { teardownFrame } from './sheet.ts';
import { findingsBlock, left, right } from './tables.ts';

type Schedule = teardown.Schedule;

/** Who does what when: the work chart of one job, its critical chain, how early it could end at all. */
export function scheduleSheet(input: TeardownSheetInput): Sheet {
  const { document: d, answer, units = 'mm' } = input;
  const { schedule, plan } = answer.value;
  const bare = teardownFrame(input, 'Who does what when?');
  if (!schedule || !d.floor)
    return {
      ...bare,
      answer: [t('No days can be told: '), f('the job names no floor'), t('.')],
      because: 'A floor says who works, with what skill, on which shifts, and which jigs stand there.',
      blocks: [],
      warnings: answer.warnings,
    };
  const jobs: ChartJob[] = [{ name: schedule.ends[0]?.job ?? d.title, title: d.title, operations: plan.operations }];
  const scene = workChart({ schedule, jobs, floor: d.floor, others: d.others });
  return {
    ...bare,
    answer: [t(`To ${targetWords(d)}: `), ...whenSpans(schedule, answer.value.quote)],
    because: chainWords(schedule),
    blocks: [
      { block: 'picture', title: scene.title, scene },
      endsBlock(schedule, d.title),
      ...(schedule.findings.length ? [findingsBlock(schedule.findings)] : []),
      jigTable(schedule, d.floor),
      crewTable(schedule, d.floor),
      chartTable(schedule, jobs, d.floor),
    ],
    working: shownSteps(answer.working, units, d.floor.currency),
    warnings: answer.warnings,
  };
}
/** The work alone may end before the new part has come: then the days with its waiting stand first. */
function whenSpans(s: Schedule, quote: teardown.Quote | null): Span[] {
  const end = s.ends[0];
  if (!end || !s.operations.length) return [f('nothing is left to be done'), t('.')];
  const { finish } = s;
  const draws = finish ? [f(dayWords(finish.p50)), t(' (P50), '), f(dayWords(finish.p80)), t(' (P80); ')] : [];
  const likely = [t(`at the likely times ${finish ? 'it ends' : 'finished'} `), f(dayWords(end.day)), t('.')];
  if (quote?.outrun && quote.finish)
    return [
      t('finished between about '),
      f(dayWords(quote.finish.early)),
      t(' and '),
      f(dayWords(quote.finish.late)),
      t(' with the waiting for a part on order. The work alone is drawn here: '),
      ...draws,
      ...likely,
    ];
  return [...(finish ? [t('finished about ')] : []), ...draws, ...likely];
}
/** How sure it is that nothing ends earlier; each of the chain waits for the one before it. */
export function chainWords(s: Schedule): string {
  const bound =
    s.bound_min >= s.end_min
      ? 'At these times no schedule ends earlier: proven.'
      : `No schedule ends earlier than ${dayWords(dayAt(s.from, s.bound_min))}; between that and this one the proof was not finished.`;
  return s.chain.length
    ? `${bound} ${count(s.chain.length, 'operation')} ${s.chain.length === 1 ? 'is' : 'are'} on the critical chain: a delay of one delays the end.`
    : bound;
}
export const dayCell = (d: Day, small?: string): Cell =>
  small ? words(dayWords(d), small) : { is: 'day', day: d, text: dayWords(d) };

function endsBlock(s: Schedule, title: string): KeyValueBlock {
  return {
    block: 'key-value',
    title: 'When it ends',
    pairs: [
      ...s.ends.map((e) => ({ key: `At the likely times: ${title}`, cell: dayCell(e.day) })),
      { key: 'No schedule ends earlier than', cell: dayCell(dayAt(s.from, s.bound_min)) },
      ...(s.finish
        ? [
            { key: 'Half of the draws end by (P50)', cell: dayCell(s.finish.p50) },
            { key: 'Eight of ten draws end by (P80)', cell: dayCell(s.finish.p80) },
            {
              key: 'Draws',
              cell: words(number(s.finish.runs), `seed ${s.finish.seed}, with one cause that all times share`),
            },
          ]
        : []),
    ],
  };
}
export function jigTable(s: Schedule, floor: teardown.Floor): TableBlock {
  const jig = new Map(floor.jigs.map((j) => [j.id, j]));
  return {
    block: 'table',
    title: 'Jigs',
    columns: [
      left('jig', 'Jig'),
      left('from', 'From'),
      left('to', 'To'),
      right('days', 'Days'),
      left('check', 'Its check is good until'),
    ],
    rows: s.jigDays.map((j, i) => {
      const until = jig.get(j.jig)?.check_good_until as Day | undefined;
      return {
        id: `jig-${i}`,
        cells: {
          jig: words(jig.get(j.jig)?.name ?? j.jig),
          from: dayCell(j.from),
          to: dayCell(j.to),
          days: quantity(j.days, 'days'),
          check: until
            ? dayCell(until, until < j.to ? 'runs out while the wing is in it' : undefined)
            : words('not said'),
        },
      };
    }),
    empty: 'No jig is taken.',
  };
}
export function crewTable(s: Schedule, floor: teardown.Floor): TableBlock {
  return {
    block: 'table',
    title: 'Hands',
    columns: [
      left('who', 'Who'),
      left('skills', 'Skills'),
      right('hours', 'Booked', 'h'),
      right('steps', 'Operations'),
    ],
    rows: floor.crew.map((c) => {
      const own = s.operations.filter((o) => o.crew.includes(c.name));
      return {
        id: c.name,
        cells: {
          who: words(c.name),
          skills: words(c.skills.map((k) => k.replaceAll('-', ' ')).join(', ')),
          hours: hoursCell(own.reduce((n, o) => n + shiftMinutes(floor, s.from, o.start_min, o.end_min), 0) / 60, 1),
          steps: quantity(own.length, ''),
        },
      };
    }),
    empty: '',
  };
}
