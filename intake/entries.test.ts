import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { addDays, parseDay, record } from '../engine/index.ts';
import { entriesFrom, type Mapping, suggestMapping } from './index.ts';
import { context, csv, taken } from './testing/files.ts';

interface Flight {
  readonly gap: number;
  readonly minutes: number;
  readonly landings: number;
  readonly use: 'private' | 'tow' | 'unknown';
}
const flights = fc.array(
  fc.record({
    gap: fc.oneof(fc.constant(0), fc.integer({ min: 0, max: 60 })),
    /** Multiples of three: 0.05 h, so that decimals and hh:mm say the same. */
    minutes: fc.integer({ min: 1, max: 100 }).map((n) => 3 * n),
    landings: fc.integer({ min: 0, max: 9 }),
    use: fc.constantFrom<Flight['use']>('private', 'tow', 'unknown'),
  }),
  { minLength: 1, maxLength: 25 },
);
const writing = fc.record({
  columns: fc.shuffledSubarray(['day', 'flight', 'total', 'landings', 'use'] as const, { minLength: 5 }),
  day: fc.constantFrom('iso', 'dmy', 'mdy', 'dotted', 'words'),
  hours: fc.constantFrom('point', 'comma', 'clock'),
  group: fc.constantFrom('', 'sign', '\u2009', '\u00a0', '\u202f', "'"),
  delimiter: fc.constantFrom(';', '\t', ','),
  title: fc.boolean(),
});
type Writing = typeof writing extends fc.Arbitrary<infer T> ? T : never;

const HEAD = { day: 'Date', flight: 'Flight time', total: 'Total time', landings: 'Landings', use: 'Use' };
const MONTH = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];

function dayWritten(day: string, how: Writing['day']): string {
  const [y, m, d] = day.split('-') as [string, string, string];
  if (how === 'iso') return day;
  if (how === 'dmy') return `${d}/${m}/${y}`;
  if (how === 'mdy') return `${m}/${d}/${y}`;
  return how === 'dotted' ? `${Number(d)}.${Number(m)}.${y}` : `${Number(d)} ${MONTH[Number(m) - 1]} ${y}`;
}
function hoursWrittenAs(minutes: number, w: Writing): string {
  const point = w.hours === 'comma' ? ',' : '.';
  const sign = w.group === 'sign' ? (w.hours === 'comma' ? '.' : ',') : w.group;
  const grouped = String(Math.floor(minutes / 60)).replace(/\B(?=(\d{3})+$)/g, sign);
  if (w.hours === 'clock') return `${grouped}:${String(minutes % 60).padStart(2, '0')}`;
  return grouped + point + String(Math.round(((minutes % 60) / 60) * 100)).padStart(2, '0');
}

function fileOf(list: readonly Flight[], w: Writing): { text: string; mapping: Partial<Mapping> } {
  let day = parseDay('2019-03-04');
  let total = 60 * 1230;
  const rows = list.map((f) => {
    day = addDays(day, f.gap);
    total += f.minutes;
    const cells = {
      day: dayWritten(day, w.day),
      flight: hoursWrittenAs(f.minutes, w),
      total: hoursWrittenAs(total, w),
      landings: String(f.landings),
      use: f.use === 'unknown' ? 'other' : f.use,
    };
    return w.columns.map((c) => `"${cells[c]}"`).join(w.delimiter);
  });
  // two lines above either way, so that the rows keep their numbers
  const above = w.title ? `Journey log\n` : '\n';
  return {
    text: `${above}${w.columns.map((c) => HEAD[c]).join(w.delimiter)}\n${rows.join('\n')}\n`,
    mapping: {
      ...(w.day === 'dmy' || w.day === 'dotted' ? { day_order: 'day_first' as const } : {}),
      ...(w.day === 'mdy' ? { day_order: 'month_first' as const } : {}),
      decimal: w.hours === 'comma' ? 'comma' : 'point',
    },
  };
}

describe('law', () => {
  it('any order of columns and any writing of the same log gives the same entries, each valid', async () => {
    const plain: Writing = {
      columns: ['day', 'flight', 'total', 'landings', 'use'],
      day: 'iso',
      hours: 'clock',
      group: '',
      delimiter: ';',
      title: false,
    };
    await fc.assert(
      fc.asyncProperty(flights, writing, async (list, w) => {
        const [a, b] = [fileOf(list, plain), fileOf(list, w)];
        const wanted = await taken(a.text, a.mapping);
        expect(await taken(b.text, b.mapping)).toEqual(wanted);
        for (const e of wanted) expect(record.zEntry.safeParse(e).success).toBe(true);
        // held against the log itself, not only against another writing of it
        const sum = list.reduce((s, f) => s + f.minutes, 0);
        const own = wanted.filter((e) => e.kind === 'flights');
        expect(own).toHaveLength(list.length);
        expect(
          own.reduce((s, e) => s + (e.kind === 'flights' ? Math.round(Number(minutesOf(e.body.hours_h))) : 0), 0),
        ).toBe(sum);
        const last = wanted.findLast((e) => e.kind === 'reading')!;
        expect(last.kind === 'reading' && minutesOf(last.body.total_h!)).toBe(60 * 1230 + sum);
      }),
      { numRuns: 200 },
    );
  });
  it('a file that runs newest first gives the entries of the one that runs oldest first', async () => {
    await fc.assert(
      fc.asyncProperty(flights, async (list) => {
        fc.pre(list.slice(1).some((f) => f.gap > 0)); // some flights of one day, not all
        const w = {
          columns: ['day', 'flight', 'total', 'landings', 'use'],
          day: 'iso',
          hours: 'point',
          group: '',
          delimiter: ',',
          title: true,
        } as Writing;
        const { text, mapping } = fileOf(list, w);
        const [title, head, ...rows] = text.trimEnd().split('\n');
        const bare = (list: Awaited<ReturnType<typeof taken>>) =>
          list.map(({ day, order, kind, body }) => ({ day, order, kind, body }));
        const turned = [title, head, ...rows.reverse()].join('\n');
        expect(bare(await taken(turned, mapping))).toEqual(bare(await taken(text, mapping)));
      }),
      { numRuns: 60 },
    );
  });
});
const minutesOf = (h: number | string): number =>
  typeof h === 'number'
    ? Math.round(h * 60)
    : h.split(':').reduce((sum, p, i) => sum + Number(p) * (i === 0 ? 60 : 1), 0);

const bodies = async (...given: Parameters<typeof taken>) =>
  (await taken(...given)).map((e) => [e.day, e.order, e.kind, e.body]);

it('totals become readings, a meter with its name', async () => {
  expect(await bodies('Date,Hobbs,Total landings\n2024-01-02,12.3,40\n')).toEqual([
    ['2024-01-02', 0, 'reading', { shows_h: 12.3, meter: 'hobbs', landings: 40 }],
  ]);
});
it('flights of one day keep their order; minutes are minutes', async () => {
  expect(await bodies('Date,Flight min,Landings,Use\n2024-01-02,90,2,tow\n2024-01-02,20,1,private\n')).toEqual([
    ['2024-01-02', 0, 'flights', { hours_h: 1.5, landings: 2, use: 'tow' }],
    ['2024-01-02', 1, 'flights', { hours_h: '0:20', landings: 1, use: 'private' }],
  ]);
});
it('wordings become inspections and events, words of the shop first; other remarks stay as notes', async () => {
  const text =
    'Date,Total time,Remarks\n2024-01-02,100,Annual/100-hour inspection\n2024-02-02,,Hard landing on the field\n2024-03-02,120,new tyres\n2024-04-02,,Blue job\n';
  expect(await bodies(text, { wordings: { 'blue job': 'inspection' } })).toEqual([
    ['2024-01-02', 0, 'reading', { total_h: 100 }],
    ['2024-01-02', 1, 'inspection', { wording: 'Annual/100-hour inspection', total_h: 100 }],
    ['2024-02-02', 0, 'event', { event: 'hard_landing', detail: 'Hard landing on the field' }],
    ['2024-03-02', 0, 'reading', { total_h: 120 }],
    ['2024-04-02', 0, 'inspection', { wording: 'Blue job' }],
  ]);
  expect((await taken(text)).find((e) => e.day === '2024-03-02')!.note).toBe('new tyres');
});
it('landings and use beside a total belong to the hours since the row before', async () => {
  const text = 'Date,Total time,Ldg,Use\n2024-01-02,100,3,tow\n2024-01-09,102.5,4,tow\n';
  const mapping = { columns: { day: 0, total_h: 1, flight_landings: 2, use: 3 } };
  expect(await bodies(text, mapping)).toEqual([
    ['2024-01-02', 0, 'reading', { total_h: 100 }],
    ['2024-01-09', 0, 'flights', { from: '2024-01-02', hours_h: 2.5, landings: 4, use: 'tow' }],
    ['2024-01-09', 1, 'reading', { total_h: 102.5 }],
  ]);
  const holed = text.replace('2024-01-09', '2024-01-05,x,1,tow\n2024-01-09');
  expect((await bodies(holed, mapping)).map((b) => b[2])).toEqual(['reading', 'reading']);
});
it('a refused row of a log by flights leaves a gap, never a shorter life', async () => {
  const text = 'Date,Flight time\n2024-01-02,1\n2024-01-05,1:75\nsome day,2\n2024-01-09,1\n';
  const gaps = (await taken(text)).filter((e) => e.kind === 'gap');
  expect(gaps.map((g) => [g.body.from, g.body.to])).toEqual([
    ['2024-01-05', '2024-01-05'],
    ['2024-01-02', '2024-01-09'],
  ]);
  for (const g of gaps) expect(record.zEntry.safeParse(g).success).toBe(true);
  expect(
    (await taken(text.replace('Flight time', 'Flight time,Total time').replace('1:75', '1:75,'))).length,
  ).toBeGreaterThan(0);
});
it('refuses an open mapping and a file of which no row stands', async () => {
  await expect(taken('Date,Total time\n01/02/2024,1\n')).rejects.toMatchObject({ code: 'intake.mapping-open' });
  await expect(
    taken(
      'Date,Total time\n2024-01-01,x\n2024-01-02,1\n',
      { columns: { day: 0, landings_total: 1 } },
      { today: parseDay('2020-01-01') },
    ),
  ).rejects.toMatchObject({ code: 'intake.nothing-to-write' });
});
it('carries paper, row, witness and evidence', async () => {
  const grid = await csv('Date,Total time\n2024-01-01,5\n');
  const [e] = entriesFrom(grid, suggestMapping(grid), {
    ...context,
    seenBy: 'A. Mechanic',
    fileSha256: 'a'.repeat(64),
  });
  expect(e).toMatchObject({
    subject: 'aircraft:1',
    evidence: 'copy',
    paper: { title: 'Journey log', row: 2, seen_by: 'A. Mechanic', seen_on: '2026-11-25', file_sha256: 'a'.repeat(64) },
  });
});
