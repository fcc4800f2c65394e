import { type Day, daysBetween, later, type teardown } from '../../engine/index.ts';
import { day as dayWords, number } from '../display.ts';
import type { Ink, Mark, Scene } from '../model.ts';
import { DAY_MIN } from '../teardown/floor-days.ts';
import { STAGE_WORDS } from '../teardown/words.ts';
import { line, r, text } from './axis.ts';
import { wideOf } from './plot.ts';
import { type AxisDay, axisOf, dayMarks, LEFT, placeOf, RIGHT, TOP } from './work-axis.ts';
import { type ChartJob, chartTable, jobWords, titlesOf } from './work-table.ts';

type Schedule = teardown.Schedule;
type Floor = teardown.Floor;
export interface WorkChartInput {
  readonly schedule: Schedule;
  readonly jobs: readonly ChartJob[];
  readonly floor: Floor;
  /** Other work that takes a jig. */
  readonly others?: readonly { readonly name: string; readonly jig: string; readonly from: Day; readonly to: Day }[];
}

const [WIDTH, ROW, BAR] = [1120, 26, 16] as const;
/** A bar narrower than this is filled, for its outline would hide it. */
const NARROW = 5;

interface Row {
  readonly name: string;
  readonly bars: readonly {
    readonly from: number;
    readonly to: number;
    readonly critical: boolean;
    readonly title: string;
    readonly words: string;
    readonly unattended: boolean;
    readonly other: boolean;
  }[];
}

/** Who does what when: a row for each person and each jig, days of work side by side, the critical chain heavy and named. */
export function workChart({ schedule, jobs, floor, others = [] }: WorkChartInput): Scene {
  const last = [...schedule.ends.map((e) => e.day), schedule.finish?.p80, schedule.finish?.p50].filter(
    (d): d is Day => !!d,
  );
  const end = last.reduce(later, schedule.from);
  const axis = axisOf(floor, schedule.from, Math.max(1, daysBetween(schedule.from, end) + 1));
  const x = placeOf(axis);
  const rows = rowsOf(schedule, jobs, floor, others);
  const bottom = TOP + Math.max(1, rows.length) * ROW;
  const marks: Mark[] = [...dayMarks(axis, bottom)];
  rows.forEach((row, i) => {
    const y = TOP + i * ROW;
    marks.push(
      line(LEFT, y + ROW, RIGHT, y + ROW, 'hair'),
      text(LEFT - 8, y + 17, cut(row.name, LEFT - 16), { anchor: 'end' }),
    );
    for (const b of row.bars) marks.push(...barMarks(b, x, y + 5));
  });
  marks.push(...endMarks(schedule, axis, x, bottom));
  const critical = schedule.operations.filter((o) => o.critical);
  return {
    title: 'Who does what when',
    description: `${number(schedule.operations.length)} operations from ${dayWords(schedule.from)}. ${schedule.ends.map((e) => `${jobWords(jobs)(e.job)} ends ${dayWords(e.day)}`).join('; ')}. ${critical.length} of them are on the critical chain: a delay of one delays the end.${schedule.finish ? ` Half of the draws end by ${dayWords(schedule.finish.p50)}, eight of ten by ${dayWords(schedule.finish.p80)}.` : ''}`,
    width: WIDTH,
    height: bottom + 76,
    marks,
    table: chartTable(schedule, jobs, floor),
  };
}

function rowsOf(
  schedule: Schedule,
  jobs: readonly ChartJob[],
  floor: Floor,
  others: NonNullable<WorkChartInput['others']>,
): Row[] {
  const titleOf = titlesOf(jobs);
  const called = jobWords(jobs);
  const bar = (o: Schedule['operations'][number]): Row['bars'][number] => {
    const { title, unattended } = titleOf(o.job, o.id);
    const words = jobs.length > 1 ? `${called(o.job)}: ${title}` : title;
    return {
      from: o.start_min,
      to: o.end_min,
      critical: o.critical,
      title: `${words}, ${dayWords(o.startDay)}${o.endDay === o.startDay ? '' : ` to ${dayWords(o.endDay)}`}${o.critical ? ', on the critical chain' : ''}`,
      words,
      unattended,
      other: false,
    };
  };
  const people = floor.crew.map((c) => ({
    name: c.name,
    bars: schedule.operations.filter((o) => o.crew.includes(c.name) && o.end_min > o.start_min).map(bar),
  }));
  const idle = schedule.operations.filter((o) => !o.crew.length && o.end_min > o.start_min);
  const jigs = floor.jigs.map((j) => ({
    name: j.name,
    bars: [
      ...others
        .filter((b) => b.jig === j.id)
        .map((b) => ({
          from: DAY_MIN * daysBetween(schedule.from, b.from),
          to: DAY_MIN * (daysBetween(schedule.from, b.to) + 1),
          critical: false,
          title: `${b.name}, ${dayWords(b.from)} to ${dayWords(b.to)}`,
          words: b.name,
          unattended: false,
          other: true,
        })),
      ...schedule.jigDays
        .filter((d) => d.jig === j.id)
        .map((d) => ({
          from: DAY_MIN * daysBetween(schedule.from, d.from),
          to: DAY_MIN * (daysBetween(schedule.from, d.to) + 1),
          critical: false,
          title: `Taken ${dayWords(d.from)} to ${dayWords(d.to)}`,
          words: 'taken',
          unattended: true,
          other: false,
        })),
    ],
  }));
  return [
    ...chainRow(schedule, jobs),
    ...people,
    ...(idle.length ? [{ name: 'no hands: drying, curing', bars: idle.map(bar) }] : []),
    ...jigs,
  ].filter((row) => row.bars.length > 0);
}
/** The critical chain as one row, by stage; of several jobs by job. */
function chainRow(schedule: Schedule, jobs: readonly ChartJob[]): Row[] {
  const of = titlesOf(jobs);
  const called = jobWords(jobs);
  const runs: { name: string; from: number; to: number }[] = [];
  for (const o of schedule.operations.filter((x) => x.critical).sort((a, b) => a.start_min - b.start_min)) {
    const { stage } = of(o.job, o.id);
    const name = jobs.length > 1 ? called(o.job) : stage ? STAGE_WORDS[stage] : '';
    const last = runs.at(-1);
    if (last && last.name === name) last.to = Math.max(last.to, o.end_min);
    else runs.push({ name, from: o.start_min, to: o.end_min });
  }
  if (!runs.length) return [];
  return [
    {
      name: 'Critical chain',
      bars: runs.map((b) => ({
        from: b.from,
        to: b.to,
        critical: true,
        title: `Critical chain: ${b.name}`,
        words: b.name,
        unattended: false,
        other: false,
      })),
    },
  ];
}
function barMarks(b: Row['bars'][number], x: (min: number) => number, y: number): Mark[] {
  const [from, to] = [x(b.from), x(b.to)];
  if (b.to <= 0 || from >= RIGHT) return [];
  const w = Math.max(1.2, r(to - from - 0.6));
  const [stroke, fill, width]: readonly [Ink, Ink, number] = b.critical
    ? ['dye', 'dye-soft', 2.2]
    : b.other
      ? ['soft', 'paper', 0.9]
      : ['ink', b.unattended ? 'none' : 'sheet', 0.9];
  if (w < NARROW)
    return [
      {
        is: 'rect',
        x: from,
        y,
        w,
        h: BAR,
        stroke: 'none',
        fill: b.critical ? 'dye' : b.other ? 'line' : 'soft',
        width: 0,
        title: b.title,
      },
    ];
  const marks: Mark[] = [{ is: 'rect', x: from, y, w, h: BAR, stroke, fill, width, title: b.title }];
  const words = cut(b.words, w - 8);
  if (words.length > 8 || words === b.words)
    if (wideOf(words, 10) <= w - 6)
      marks.push(
        text(r(from + 4), y + 12, words, {
          size: 10,
          ink: b.critical ? 'dye' : 'ink',
          ...(b.critical ? { bold: true } : {}),
        }),
      );
  return marks;
}
const cut = (words: string, width: number): string => {
  const most = Math.floor(width / wideOf('m', 11));
  return words.length > most ? `${words.slice(0, Math.max(0, most - 3)).trimEnd()}...` : words;
};

/** Below the rows: the earliest that any schedule could end, where this one ends, P50 and P80 of the draws. */
function endMarks(s: Schedule, axis: readonly AxisDay[], x: (min: number) => number, bottom: number): Mark[] {
  const endOfDay = (d: Day): number => {
    const at = axis.find((a) => a.day === d);
    return at ? at.x + at.w : RIGHT;
  };
  const ends: { readonly x: number; readonly words: string; readonly dash?: string; readonly bold?: boolean }[] = [
    ...(s.bound_min < s.end_min
      ? [{ x: x(s.bound_min), words: 'no schedule ends earlier than this', dash: '2 3' }]
      : []),
    {
      x: x(s.end_min),
      words: s.bound_min >= s.end_min ? 'end at the likely times, proven the earliest' : 'end at the likely times',
      bold: true,
    },
    ...(s.finish
      ? [
          { x: endOfDay(s.finish.p50), words: `P50: ${dayWords(s.finish.p50)}`, dash: '6 3' },
          { x: endOfDay(s.finish.p80), words: `P80: ${dayWords(s.finish.p80)}`, dash: '9 3' },
        ]
      : []),
  ];
  return [...ends]
    .sort((a, b) => a.x - b.x)
    .flatMap((e, i): Mark[] => {
      const y = bottom + 16 + 15 * i;
      return [
        line(r(e.x), TOP, r(e.x), y + 2, e.bold ? 'ink' : 'soft', e.bold ? 1.6 : 1, e.dash),
        text(r(e.x - 6), y, e.words, { size: 11, anchor: 'end', ...(e.bold ? { bold: true } : { ink: 'soft' }) }),
      ];
    });
}
