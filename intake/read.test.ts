import { stringify } from 'csv-stringify/sync';
import ExcelJS from 'exceljs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { isRefusal } from '../engine/index.ts';
import { readGrid } from './index.ts';
import { csv, utf8, xlsx, zip } from './testing/files.ts';

const texts = (grid: Awaited<ReturnType<typeof csv>>) => grid.rows.map((r) => r.cells.map((c) => c.text));

it('a cover sheet before the log is passed over; a sheet that was named is taken', async () => {
  const book = new ExcelJS.Workbook();
  book.addWorksheet('Cover').addRow(['Log of an aircraft']);
  book.addWorksheet('Log').addRows([['Notes'], ['Date', 'Total hours'], ['2024-01-31', 10.5]]);
  const bytes = new Uint8Array((await book.xlsx.writeBuffer()) as ArrayBuffer);
  expect(await readGrid(bytes, 'a.xlsx')).toMatchObject({ sheet: 'Log', sheets: ['Cover', 'Log'] });
  expect((await readGrid(bytes, 'a.xlsx', 'Cover')).sheet).toBe('Cover');
});

describe('CSV', () => {
  it('random grids written by csv-stringify, a general-purpose library, come back cell for cell', async () => {
    const field = fc.string({ unit: fc.constantFrom('a', '7', ' ', '"', ',', ';', '\t', '\n', '\r', 'é', '—', '.') });
    const grid = fc
      .integer({ min: 2, max: 5 })
      .chain((w) => fc.array(fc.array(field, { minLength: w, maxLength: w }), { minLength: 2, maxLength: 12 }));
    await fc.assert(
      fc.asyncProperty(grid, fc.constantFrom(',', ';', '\t'), async (rows, delimiter) => {
        const text = stringify([rows[0]!.map((_, i) => `h${i}`), ...rows], {
          delimiter,
          quoted: true,
          quoted_empty: true,
        });
        const back = texts(await csv(text));
        expect(back.slice(1)).toEqual(rows.map((r) => r.map((f) => (f.trim() === '' ? '' : f))));
      }),
      { numRuns: 300 },
    );
  });

  const log = 'Day;Landings;Remark\r\n2024-01-05;3;café – “ok”\r\n';
  const utf16 = (bom: boolean, big: boolean) => {
    const b = Buffer.from((bom ? '\ufeff' : '') + log, 'utf16le');
    return new Uint8Array(big ? b.swap16() : b);
  };
  it.each([
    ['UTF-8', utf8(log), 'utf-8'],
    ['UTF-8 with mark', utf8(`\ufeff${log}`), 'utf-8'],
    ['UTF-16 little', utf16(true, false), 'utf-16'],
    ['UTF-16 big', utf16(true, true), 'utf-16'],
    ['UTF-16 without mark', utf16(false, false), 'utf-16'],
    // 0xe9 é, 0x96 –, 0x93 “, 0x94 ”: Windows-1252, as the WHATWG Encoding Standard's index lists them
    [
      'Windows-1252',
      new Uint8Array(
        Buffer.from(log.replace('é', '\xe9').replace('–', '\x96').replace('“', '\x93').replace('”', '\x94'), 'latin1'),
      ),
      'windows-1252',
    ],
  ])('%s', async (_, bytes, encoding) => {
    const grid = await readGrid(bytes, 'log.csv');
    expect(grid.encoding).toBe(encoding);
    expect(texts(grid)).toEqual([
      ['Day', 'Landings', 'Remark'],
      ['2024-01-05', '3', 'café – “ok”'],
    ]);
  });

  it('takes the separator that the file announces, and numbers rows as a spreadsheet does', async () => {
    const grid = await csv('sep=;\na;b,c\n\n1;2\n');
    expect(grid.rows.map((r) => [r.row, ...r.cells.map((c) => c.text)])).toEqual([
      [2, 'a', 'b,c'],
      [3, ''],
      [4, '1', '2'],
    ]);
  });
});

describe('XLSX', () => {
  it.each([false, true])('typed cells, 1904 dates: %s', async (is1904) => {
    const bytes = await xlsx(
      [
        ['Date', 'Hours', 'Landings', 'Remark'],
        [new Date('2024-02-29T00:00:00Z'), 51.5 / 24, 3, 'as text'],
      ],
      is1904,
      { 1: 'dd/mm/yyyy' },
    );
    const grid = await readGrid(bytes, 'log.xlsx');
    expect(grid.rows[1]!.cells).toMatchObject([
      { is: 'day', day: '2024-02-29' },
      { is: 'number' },
      { is: 'number', value: 3 },
      { is: 'text', text: 'as text' },
    ]);
  });
  it.each([false, true])('durations beyond a day, 1904 dates: %s', async (is1904) => {
    const bytes = await xlsx([['Total'], [1234.5 / 24], [0.5 / 24]], is1904, { 1: '[h]:mm' });
    const grid = await readGrid(bytes, 'log.xlsx');
    expect(grid.rows.slice(1).map((r) => r.cells[0])).toMatchObject([
      { is: 'time', seconds: 1234.5 * 3600, text: '1234:30' },
      { is: 'time', seconds: 1800, text: '0:30' },
    ]);
  });
  it('reads and marks stored results of formulas, and names those without', async () => {
    const bytes = await xlsx([
      ['a', 'b', 'c'],
      [1, { formula: 'A2+1', result: 2 }, { formula: 'A2+2' }],
    ]);
    const grid = await readGrid(bytes, 'log.xlsx');
    expect(grid.rows[1]!.cells).toMatchObject([
      { is: 'number', value: 1 },
      { is: 'number', value: 2, fromFormula: true },
      { is: 'unreadable', fromFormula: true, why: 'a formula without a stored value' },
    ]);
    expect(grid.rows[1]!.cells[0]).not.toHaveProperty('fromFormula');
  });
  it('takes the first sheet with data, or the one that is named', async () => {
    const book = new ExcelJS.Workbook();
    book.addWorksheet('Cover');
    book.addWorksheet('Log').addRow(['first']);
    book.addWorksheet('More').addRow(['second']);
    const bytes = new Uint8Array(await book.xlsx.writeBuffer());
    const grid = await readGrid(bytes, 'a.xlsx');
    expect([grid.sheet, grid.sheets, texts(grid)]).toEqual(['Log', ['Log', 'More'], [['first']]]);
    expect(texts(await readGrid(bytes, 'a.xlsx', 'More'))).toEqual([['second']]);
    await expect(readGrid(bytes, 'a.xlsx', 'Cover')).rejects.toMatchObject({ code: 'intake.sheet-unknown' });
  });
});

const book = { name: 'xl/workbook.xml', data: utf8('<workbook/>') };

describe('refusals of a file', () => {
  const many = `a,b\n${'1,2\n'.repeat(50_001)}`;
  it.each<[string, string, () => Uint8Array | Promise<Uint8Array>, string, RegExp]>([
    ['nothing in it', 'intake.file-empty', () => new Uint8Array(), 'a.csv', /right file/],
    ['only blanks', 'intake.no-data', () => utf8(' , \n\n'), 'a.csv', /right file/],
    ['a book without rows', 'intake.no-data', () => xlsx([]), 'a.xlsx', /right file/],
    ['21 MB', 'intake.file-too-large', () => new Uint8Array(21 * 1024 * 1024).fill(65), 'a.csv', /20 MB/],
    ['a PDF', 'intake.not-a-spreadsheet', () => utf8('%PDF-1.7 …'), 'a.csv', /PDF/],
    ['binary', 'intake.not-a-spreadsheet', () => new Uint8Array([1, 2, 3, 0, 5, 6]), 'a.csv', /binary/],
    ['another package', 'intake.not-a-spreadsheet', () => zip([{ name: 'x', data: utf8('x') }]), 'a.xlsx', /package/],
    ['old format', 'intake.old-format', () => new Uint8Array([0xd0, 0xcf, 0x11, 0xe0, 0xa1]), 'a.xls', /\.xlsx or CSV/],
    [
      'macros inside',
      'intake.macros',
      () => zip([book, { name: 'xl/vbaProject.bin', data: utf8('x') }]),
      'a.xlsx',
      /without macros/,
    ],
    ['macros by name', 'intake.macros', () => xlsx([['a']]), 'a.xlsm', /without macros/],
    [
      'a bomb that says so',
      'intake.unpacks-too-large',
      () => zip([book, { name: 'b', data: utf8('x'), says: 2e9 }]),
      'a.xlsx',
      /150 MB/,
    ],
    [
      'a bomb that lies',
      'intake.unpacks-too-large',
      () => zip([book, { name: 'b', data: new Uint8Array(5e6), says: 10 }]),
      'a.xlsx',
      /150 MB/,
    ],
    ['50,001 rows', 'intake.too-many-rows', () => utf8(many), 'a.csv', /50000/],
    ['300 columns', 'intake.too-wide', () => utf8(`${'a,'.repeat(300)}\n`), 'a.csv', /200 columns/],
    ['an open quote', 'intake.broken', () => utf8('a,b\n"1,2\n3,4\n'), 'a.csv', /[Qq]uote/],
    ['half a package', 'intake.broken', async () => (await xlsx([['a', 1]])).slice(0, 900), 'a.xlsx', /save it again/],
    [
      'a package of nonsense',
      'intake.broken',
      () => zip([{ name: 'xl/workbook.xml', data: utf8('<workbook><<') }]),
      'a.xlsx',
      /save it again/,
    ],
  ])('%s', async (_, code, bytes, name, says) => {
    const e = await readGrid(await bytes(), name).catch((x: unknown) => x);
    expect(isRefusal(e) && e.code).toBe(code);
    expect((e as Error).message).toMatch(says);
  });
  it('50,000 rows are taken', async () => {
    expect((await csv(`a,b\n${'1,2\n'.repeat(50_000)}`)).rows).toHaveLength(50_001);
  });
});
