import type { Day, teardown } from '../../engine/index.ts';
import { count, day as dayWords } from '../display.ts';
import { caution, emptySheet, f, type ShopNamed, t } from '../frame.ts';
import { quantity } from '../measure.ts';
import type { Sheet } from '../model.ts';
import { workChart } from '../scenes/work-chart.ts';
import { type ChartJob, chartTable } from '../scenes/work-table.ts';
import { chainWords, crewTable, dayCell, jigTable } from './schedule-sheet.ts';
import { findingsBlock, left, right } from './tables.ts';

type Schedule = teardown.Schedule;

export interface CalendarInput {
  readonly shop: ShopNamed & { readonly id: string };
  readonly day: Day;
  readonly floor: teardown.Floor | null;
  readonly schedule: Schedule | null;
  /** Every kept job, by the name that the schedule has for it. */
  readonly jobs: readonly (ChartJob & { readonly title: string })[];
  readonly others?: readonly { readonly name: string; readonly jig: string; readonly from: Day; readonly to: Day }[];
  /** Jobs that could not be put on it, each with the reason. */
  readonly left?: readonly { readonly name: string; readonly title: string; readonly because: string }[];
}
/** All jobs of a shop on one chart: they share hands and jigs. */
export function calendarSheet(q: CalendarInput): Sheet {
  const { schedule, floor, jobs } = q;
  const bare: Sheet = {
    ...emptySheet('teardown', 'Calendar', q.day, q.shop.invented === true),
    titleBlock: {
      fields: [
        { label: 'Shop', value: q.shop.name },
        ...(floor ? [{ label: 'Floor', value: floor.title }] : []),
        { label: 'On', value: dayWords(q.day) },
      ],
    },
    caution: caution(q.shop.invented === true),
  };
  const leftOut = (q.left ?? []).map((l) => ({
    code: 'not-on-calendar',
    text: `${l.title} is not on the calendar: ${l.because}`,
    about: [],
    remedy: 'Open the job and correct it.',
  }));
  if (!schedule || !floor || !schedule.operations.length)
    return {
      ...bare,
      answer: [f('No job'), t(' is on the calendar.')],
      because: floor
        ? 'Keep a job with targets and a first day, and it stands here.'
        : 'The shop keeps no floor yet: who works when, and which jigs stand there.',
      blocks: leftOut.length ? [findingsBlock(leftOut)] : [],
    };
  const titleOf = new Map(jobs.map((j) => [j.name, j.title]));
  /** A finding of the schedule speaks of a job by the name it is kept under. */
  const inTitles = (text: string) => jobs.reduce((s, j) => s.replaceAll(j.name, j.title), text);
  const scene = workChart({ schedule, jobs, floor, ...(q.others ? { others: q.others } : {}) });
  const last = schedule.ends.reduce((a, b) => (a.end_min >= b.end_min ? a : b));
  return {
    ...bare,
    answer: [
      f(count(schedule.ends.length, 'job')),
      t(schedule.ends.length === 1 ? ' is on the calendar; it ends ' : ' share the floor; the last, '),
      ...(schedule.ends.length === 1 ? [] : [t(`${titleOf.get(last.job) ?? last.job}, ends `)]),
      f(dayWords(last.day)),
      t('.'),
    ],
    because: `${chainWords(schedule)} Waiting for a part on order is not drawn: the quote of each job holds it.`,
    blocks: [
      { block: 'picture', title: scene.title, scene },
      {
        block: 'table',
        title: 'Jobs',
        linked: true,
        columns: [left('job', 'Job'), left('end', 'Ends, at the likely times'), right('steps', 'Operations')],
        rows: schedule.ends.map((e) => ({
          id: e.job,
          cells: {
            job: {
              is: 'link',
              text: titleOf.get(e.job) ?? e.job,
              href: ['', q.shop.id, 'teardown', 'jobs', e.job].map(encodeURIComponent).join('/'),
            },
            end: dayCell(e.day),
            steps: quantity(schedule.operations.filter((o) => o.job === e.job).length, ''),
          },
        })),
        empty: '',
      },
      ...(schedule.findings.length + leftOut.length
        ? [findingsBlock([...schedule.findings.map((x) => ({ ...x, text: inTitles(x.text) })), ...leftOut])]
        : []),
      jigTable(schedule, floor),
      crewTable(schedule, floor),
      chartTable(schedule, jobs, floor),
    ],
  };
}
