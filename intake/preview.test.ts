import { describe, expect, it } from 'vitest';
import { parseMapping, preview, readGrid, shapeOf, suggestMapping } from './index.ts';
import { context, csv, seen, taken, utf8, xlsx } from './testing/files.ts';

const reasons = async (...given: Parameters<typeof seen>) =>
  (await seen(...given)).rows.filter((r) => r.verdict === 'refused').map((r) => `${r.row}: ${r.reason}`);
const warnings = async (...given: Parameters<typeof seen>) =>
  (await seen(...given)).rows.filter((r) => r.warning).map((r) => `${r.row}: ${r.warning}`);

describe('a first mapping', () => {
  it('finds headings below a title, totals and flights apart, comma, uses', async () => {
    const grid = await csv(
      'Log of the tug\n\nDatum;Flugzeit;Gesamtzeit Zelle;Total time;Ldg;Purpose;Remarks\n31.01.2024;1,5;;1.234,5;3;Glider tow;first day\n',
    );
    expect(suggestMapping(grid)).toMatchObject({
      header_row: 3,
      columns: { day: 0, flight_h: 1, total_h: 3, flight_landings: 4, use: 5, wording: 6 },
      day_order: 'day_first',
      decimal: 'comma',
      uses: { 'glider tow': 'tow' },
    });
  });
  it('takes times of day for no landings, flight time before block time, the type of flight for the use', async () => {
    const grid = await csv(
      'Date,Off block,Take off,Landing,On block,Block time,Flight time,Ldg,Type of flight,What\n' +
        '2024-01-31,10:00,10:05,10:30,10:34,0:34,0:25,2,dual,annual\n2024-02-01,9:00,9:05,9:35,9:40,0:40,0:30,1,dual,\n',
    );
    expect(suggestMapping(grid)).toMatchObject({
      columns: { day: 0, flight_h: 6, flight_landings: 7, use: 8, wording: 9 },
      uses: { dual: 'instruction' },
    });
  });
  it('tells a column named "Hours" by what it does', async () => {
    const climbing = await csv('Date,Hours\n2024-01-01,100\n2024-02-01,110\n2024-03-01,121\n2024-04-01,130\n');
    const single = await csv('Date,Hours\n2024-01-01,1.0\n2024-02-01,0.8\n2024-03-01,1.2\n2024-04-01,0.5\n');
    expect(suggestMapping(climbing).columns).toEqual({ day: 0, total_h: 1 });
    expect(suggestMapping(single).columns).toEqual({ day: 0, flight_h: 1 });
  });
  it.each([
    ['13/02/2024', '01/02/2024', 'day_first'],
    ['02/13/2024', '01/02/2024', 'month_first'],
    ['02/03/2024', '01/02/2024', 'to_be_chosen'],
    ['02/13/2024', '13/02/2024', 'to_be_chosen'],
    ['2024-02-03', '3 Feb 2024', 'day_first'],
  ])('%s and %s: %s', async (a, b, order) => {
    expect(suggestMapping(await csv(`Date,Total time\n${a},1\n${b},2\n`)).day_order).toBe(order);
  });
  it.each([
    ['1,234', '1,300', 'to_be_chosen'],
    ['1,234', '999.5', 'point'],
    ['1.234', '999,5', 'comma'],
    ['1,234.5', '1,300.0', 'point'],
    ['1.5', '1,5', 'to_be_chosen'],
    ['0,125', '0,5', 'comma'],
    ['12', '13', 'point'],
  ])('%s and %s: decimal %s', async (a, b, decimal) => {
    expect(suggestMapping(await csv(`Date\tTotal time\n2024-01-01\t${a}\n2024-01-02\t${b}\n`)).decimal).toBe(decimal);
  });
  it('files of one shape share a signature, files of another do not', async () => {
    const a = shapeOf(await csv('Date,Tach\n2024-01-01,5\n'));
    expect(shapeOf(await csv('Date,Tach\n2023-05-01,7.5\n2023-06-01,8\n'))).toBe(a);
    expect(shapeOf(await csv('Tach,Date\n5,2024-01-01\n'))).not.toBe(a);
  });
  it('goes through its own schema; an unknown field is refused', async () => {
    const m = suggestMapping(await csv('Date,Tach\n2024-01-01,5\n'));
    expect(parseMapping(JSON.parse(JSON.stringify(m)))).toEqual(m);
    expect(() => parseMapping({ ...m, colour: 1 })).toThrow(/colour/);
  });
});

describe('rows refused, by number and reason', () => {
  const row = (day: string, total = '10', ldg = '1') =>
    `Date,Total time,Landings\n${day},${total},${ldg}\n2024-06-15,900,\n`;
  it.each([
    [row('2027-01-01'), /^2: 2027-01-01 lies after today, 2026-11-25$/],
    [row('2023-02-29'), /^2: "2023-02-29" is no day of the calendar$/],
    [row('soon'), /^2: "soon" is no day$/],
    [row('2024-01-01', '10:75'), /more than 59 minutes/],
    [row('2024-01-01', '"1,23"'), /total hours: "1,23" is no number with a decimal point/],
    [row('2024-01-01', '-5'), /less than nothing/],
    [row('2024-01-01', '1e9'), /no number/],
    [row('2024-01-01', '10', '2.5'), /landings: "2.5" is no whole number/],
    ['Date,Flight time,Remarks\n2024-01-01,24.5,\n', /^2: more than 24 h in one day$/],
    ['Date,Flight time,Remarks\n2024-01-01,,washed it\n', /^2: nothing to record/],
    ['Date,Flight time,Landings\n2024-01-02,1,1\n2024-01-01,,4\n', /^3: landings without hours$/],
  ])('%j', async (text, says) => {
    const found = await reasons(text, { decimal: 'point' });
    expect(found).toHaveLength(1);
    expect(found[0]).toMatch(says);
  });
  it('two digits of year lie where the mapping says, and the preview says so', async () => {
    const p = await seen('Date,Total time\n31/12/49,1\n', { two_digit_years_from: 1940 });
    expect(p.first).toBe('1949-12-31');
    expect(p.notes.join()).toMatch(/1940 to 2039/);
  });
  it('another aircraft, or several and none named', async () => {
    const text = 'Date,Reg,Total time\n2024-01-01,ZZ-ABC,10\n2024-01-02,ZZ-DEF,20\n';
    expect(await reasons(text, {}, { registration: 'zzabc' })).toEqual(['3: the row is of another aircraft, ZZ-DEF']);
    expect(await reasons(text)).toHaveLength(2);
  });
  it('what the log holds already, one row for each entry', async () => {
    const text = 'Date,Flight time,Use\n2024-01-01,1.5,private\n2024-01-01,1.5,private\n2024-01-02,2,tow\n';
    const existing = (await taken(text)).slice(0, 1);
    expect(await reasons(text, {}, { existing })).toEqual(['2: already in the log, entry row-2-flights']);
    expect(await reasons(text, {}, { existing: await taken(text) })).toHaveLength(3);
    expect(await reasons(text, {}, { existing, subject: 'aircraft:2' })).toEqual([]);
  });
  it('a formula without a stored value, at its row; stored results are counted', async () => {
    const bytes = await xlsx([
      ['Date', 'Total time'],
      ['2024-01-01', { formula: '5*2', result: 10 }],
      ['2024-01-02', { formula: '5*4' }],
    ]);
    const grid = await readGrid(bytes, 'a.xlsx');
    const p = preview(grid, suggestMapping(grid), context);
    expect(p.rows.map((r) => [r.row, r.verdict, r.reason])).toEqual([
      [2, 'accepted', undefined],
      [3, 'refused', 'total hours: a formula without a stored value'],
    ]);
    expect(p.rows[0]!.fromFormula).toBe(true);
    expect(p.notes.join()).toMatch(/nothing is worked out again/);
  });
});

describe('warnings', () => {
  it.each([
    ['Date,Total time\n2024-01-01,10\n2024-01-05,9\n', /^3: total hours run backwards: 9.0 h after 10.0 h in row 2/],
    ['Date,Tach\n2024-01-01,10\n2024-01-02,99\n', /^3: the meter grow by 89.0 h since row 2: more than 24 h a day/],
    ['Date,Total time\n2022-01-01,10\n2024-01-05,19\n', /^3: 734 days without a row/],
    ['Date,Flight time\n2024-01-01,13\n2024-01-01,12\n', /^3: the rows of 2024-01-01 add up to more than 24 h/],
    [
      'Date,Flight time,Total time\n2024-01-01,1,10\n2024-01-02,1,11.2\n',
      /^3: total hours grow by 1.2 h .* add up to 1.0 h/,
    ],
    ['Date,Total time\n2024-01-01,10\n2024-01-01,10\n', /^3: the same as row 2/],
    ['Date,Flight time,Use\n2024-01-01,1,odd\n', /^2: "odd" is no known use/],
  ])('%j', async (text, says) => {
    const found = await warnings(text, /odd/.test(text) ? { uses: {} } : {});
    expect(found).toHaveLength(1);
    expect(found[0]).toMatch(says);
  });
  it('a tenth of an hour of rounding is let pass', async () => {
    expect(await warnings('Date,Flight time,Total time\n2024-01-01,1,10\n2024-01-02,1,11.1\n')).toEqual([]);
  });
});

it('sums and repeated headings are left aside and said', async () => {
  const p = await seen('Date,Flight time\n2024-01-01,1\nDate,Flight time\n2024-01-02,2\n\nTotal,3\n');
  expect(p.counts).toEqual({ accepted: 2, refused: 0, warned: 0 });
  expect(p.notes).toHaveLength(2);
  expect(p.totals).toMatchObject({ 'Use not stated': '3.0 h, 0 landings' });
});

it('tells how far it is', async () => {
  const told: number[] = [];
  const grid = await readGrid(utf8(`Date,Total time\n${'2024-01-01,1\n'.repeat(1200)}`), 'a.csv');
  preview(grid, suggestMapping(grid), { ...context, onProgress: (done) => told.push(done) });
  expect(told).toEqual([0, 500, 1000, 1201]);
});

it('a mapping that names a column twice, or one that is not there, is refused', async () => {
  await expect(seen('Date,Tach\n2024-01-01,1\n', { columns: { day: 0, total_h: 0 } })).rejects.toMatchObject({
    code: 'intake.mapping-unfit',
  });
  await expect(seen('Date,Tach\n2024-01-01,1\n', { columns: { day: 0, total_h: 7 } })).rejects.toMatchObject({
    code: 'intake.mapping-unfit',
  });
});

describe('what the log will not hold is said before it is written', () => {
  it('landings beside a meter without hours, and refused rows', async () => {
    const { notes, rows } = await seen('Date,Tach,Landings\n2024-01-31,10.5,2\n2024-02-01,11.5,1\n2999-02-01,12.5,1\n');
    expect(rows[2]!.reason).toContain('the year 2999 cannot be meant');
    expect(notes.join(' ')).toMatch(/2 rows name landings or a use but no hours/);
    expect(notes.join(' ')).toMatch(/Refused rows are not written/);
    expect((await seen('Date,Flight time,Landings\n2024-01-31,1h20,2\n')).notes).toEqual([]);
  });
});
