import { expect, it } from 'vitest';
import type { Day, directive } from '../../engine/index.ts';
import { Forecasts, KeptDates } from './forecasts.ts';
import { Gently } from './gently.ts';

const DAY = '2026-11-25' as Day;
const readings = [
  { day: '2024-01-01' as Day, total_s: 3_600_000, landings: 1000 },
  { day: '2026-11-01' as Day, total_s: 4_000_000, landings: 1200 },
];
const end = (hours: number, standing: directive.Standing = 'not yet due'): directive.LineEnd => ({
  standing,
  dueAt: { total_s: 4_000_000 + hours * 3600, landings: null, day: null, now: false },
  left: { value: hours, unit: 'h', limit: 'so many hours', hours_s: hours * 3600, landings: null },
});
const line = (treatAs: directive.LineEnd, couldBecome: directive.LineEnd): directive.StandingLine => ({
  directive: 'T-1',
  issue: 1,
  action: 'look',
  title: 'Look',
  part: 'sp',
  treatAs,
  couldBecome,
  soon_days: 180,
  alternative: null,
  lastDone: null,
  hangsOn: null,
  notComputed: false,
  dates: null,
});

it('a date that is kept is of the same readings, day, and both ends of what is left', async () => {
  const kept = new KeptDates();
  const gently = new Gently();
  const of = async (l: directive.StandingLine, day = DAY, r = readings) =>
    (await new Forecasts(r, day, kept).dated(l, gently)).dates;
  const first = await of(line(end(100), end(100)));
  expect(await of(line(end(100), end(100)))).toBe(first);
  const wide = await of(line(end(100), end(400)));
  expect(wide!.treatAs).toEqual(first!.treatAs);
  expect(wide!.couldBecome).not.toEqual(first!.couldBecome);
  expect(await of(line(end(40), end(100)))).not.toEqual(first);
  const busier = [readings[0]!, { ...readings[1]!, total_s: 4_600_000 }];
  expect(await of(line(end(100), end(100)), DAY, busier)).not.toEqual(first);
  expect((await of(line(end(100), end(100)), '2026-11-26' as Day))!.asOf).toBe('2026-11-26');
});
it('what is due, ended or not affected is given no date; nor is anything without readings', async () => {
  const of = async (l: directive.StandingLine, r = readings) =>
    (await new Forecasts(r, DAY, new KeptDates()).dated(l, new Gently())).dates;
  for (const s of ['due', 'overdue', 'ended', 'not affected'] as const)
    expect(await of(line(end(5, s), end(400)))).toBeNull();
  expect(await of(line(end(5, 'soon due'), end(400)))).not.toBeNull();
  expect(await of(line(end(5), end(400)), [])).toBeNull();
});
