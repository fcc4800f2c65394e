import type { teardown } from '../../engine/index.ts';
import { day as dayWords } from '../display.ts';
import type { TableBlock } from '../model.ts';
import { DAY_MIN } from '../teardown/floor-days.ts';

type Schedule = teardown.Schedule;
export interface ChartJob {
  readonly name: string;
  /** What people call it; without it, its name. */
  readonly title?: string;
  readonly operations: readonly Pick<teardown.Operation, 'id' | 'title' | 'unattended' | 'stage'>[];
}
/** Title and stage of an operation of a job by its id. */
export const titlesOf = (jobs: readonly ChartJob[]) => {
  const all = new Map(jobs.flatMap((j) => j.operations.map((o) => [`${j.name}|${o.id}`, o] as const)));
  return (job: string, id: string) => all.get(`${job}|${id}`) ?? { title: id, unattended: false, stage: null };
};
/** What people call a job, by the name that the schedule has for it. */
export const jobWords = (jobs: readonly ChartJob[]) => {
  const all = new Map(jobs.map((j) => [j.name, j.title ?? j.name]));
  return (name: string): string => all.get(name) ?? name;
};

/** Every operation in the order in which it begins. */
export function chartTable(
  schedule: Schedule,
  jobs: readonly ChartJob[],
  { jigs }: Pick<teardown.Floor, 'jigs'>,
): TableBlock {
  const jigOf = new Map(jigs.map((j) => [j.id, j.name]));
  const titleOf = titlesOf(jobs);
  const called = jobWords(jobs);
  const clockOf = (min: number): string => {
    const m = Math.round(((min % DAY_MIN) + DAY_MIN) % DAY_MIN);
    return `${String(Math.floor(m / 60)).padStart(2, '0')}:${String(m % 60).padStart(2, '0')}`;
  };
  const inOrder = schedule.operations
    .map((o, i) => ({ o, i }))
    .sort((a, b) => a.o.start_min - b.o.start_min || a.i - b.i);
  return {
    block: 'table',
    title: 'Operations in the order in which they begin',
    wide: true,
    columns: [
      ...(jobs.length > 1 ? [{ key: 'job', title: 'Job', align: 'left' as const }] : []),
      { key: 'what', title: 'What', align: 'left' },
      { key: 'from', title: 'Begins', align: 'left' },
      { key: 'to', title: 'Ends', align: 'left' },
      { key: 'who', title: 'Who', align: 'left' },
      { key: 'jig', title: 'Jig', align: 'left' },
      { key: 'chain', title: 'Critical chain', align: 'left' },
    ],
    rows: inOrder.map(({ o }) => ({
      id: jobs.length > 1 ? `${o.job}|${o.id}` : o.id,
      cells: {
        job: { is: 'text', text: called(o.job) },
        what: { is: 'text', text: titleOf(o.job, o.id).title },
        from: { is: 'day', day: o.startDay, text: `${dayWords(o.startDay)} ${clockOf(o.start_min)}` },
        to: { is: 'day', day: o.endDay, text: `${dayWords(o.endDay)} ${clockOf(o.end_min)}` },
        who: { is: 'text', text: o.crew.join(', ') || (titleOf(o.job, o.id).unattended ? 'no hands' : '') },
        jig: o.jig ? { is: 'text', text: jigOf.get(o.jig) ?? o.jig } : { is: 'nothing' },
        chain: o.critical ? { is: 'text', text: 'on it' } : { is: 'nothing' },
      },
    })),
    empty: 'Nothing is left to be done.',
  };
}
