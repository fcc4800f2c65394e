import { spawnSync } from 'node:child_process';
import { parse } from 'csv-parse/sync';
import ExcelJS from 'exceljs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Day, parseDay } from '../engine/index.ts';
import type { Cell, Sheet, TableBlock } from '../sheets/index.ts';
import { sheetCsv, sheetPdf, sheetXlsx } from './index.ts';

const found = spawnSync('pdftotext', ['-v']).error === undefined;
const text = (words: string, small?: string): Cell => ({ is: 'text', text: words, ...(small ? { small } : {}) });
const row = (id: string, more: Record<string, Cell> = {}): TableBlock['rows'][number] => ({
  id,
  cells: {
    aircraft: { is: 'link', text: `ZQ-${id}`, href: '/x' },
    standing: {
      is: 'standing',
      worst: 'due',
      best: 'not yet due',
      act: true,
      text: 'treat as due',
      small: 'could become not yet due',
    },
    line: { is: 'due-line', marks: [], text: 'now' },
    at: { is: 'quantity', value: 5238.4, unit: 'h', places: 1, text: '5 238.4' },
    on: { is: 'day', day: parseDay('2027-03-09') as Day, text: '9 Mar 2027' },
    left: { is: 'quantity', value: { low: -3, high: 12.5 }, unit: 'h', places: 1, text: '−3 to 12.5' },
    paper: text('Logbook, volume 3'),
    ...more,
  },
});
const sheetOf = (rows: TableBlock['rows'], more: Partial<Sheet> = {}): Sheet => ({
  word: 'fleet',
  title: 'Due sheet',
  subject: 'Field Structures',
  day: parseDay('2026-11-25'),
  titleBlock: {
    fields: [
      { label: 'Shop', value: 'Field Structures' },
      { label: 'Known to', value: 'entry 512' },
    ],
  },
  answer: [{ text: 'Two aircraft ' }, { text: 'fall due', figure: true }, { text: '.' }],
  because: 'At their own flying rates.',
  blocks: [
    {
      block: 'table',
      title: 'What falls due',
      columns: [
        { key: 'aircraft', title: 'Aircraft', align: 'left' },
        { key: 'standing', title: 'Treat as', align: 'left' },
        { key: 'line', title: 'Next ten years', align: 'left' },
        { key: 'at', title: 'Due at', align: 'right' },
        { key: 'on', title: 'Due on', align: 'right' },
        { key: 'left', title: 'Left', align: 'right' },
        { key: 'paper', title: 'Paper', align: 'left' },
      ],
      rows,
      empty: 'Nothing falls due.',
    },
  ],
  working: [],
  warnings: ['17 of 2 000 aircraft are being computed.'],
  caution: 'Figures inform; they approve nothing.',
  provenance: { known: 'read', evidence: 'copy', invented: false },
  ...more,
});
const csvOf = (sheet: Sheet): string[][] =>
  parse(Buffer.from(sheetCsv(sheet)), { bom: true, relax_column_count: true, skip_empty_lines: false });
const wordsOf = (pdf: Uint8Array): string =>
  spawnSync('pdftotext', ['-layout', '-', '-'], { input: pdf }).stdout.toString();

describe('CSV, read back with csv-parse', () => {
  it('figures stand without what binary fractions leave: 9.525, not 9.524999999999999', () => {
    const length: Cell = { is: 'quantity', value: 0.375 * 25.4 - 1e-15, unit: 'mm', places: 1, text: '9.5' };
    const both: Cell = { is: 'quantity', value: { low: 0.1 + 0.2, high: 1e12 + 0.5 }, unit: 'h', places: 1, text: 'x' };
    const out = new TextDecoder().decode(sheetCsv(sheetOf([row('AAA', { at: length, left: both })])));
    expect(out).toContain(',9.525,');
    expect(out).toMatch(/,0\.3,/);
  });
  it('has one kind of value a column, the unit in the heading, days as ISO 8601, no picture', () => {
    expect(csvOf(sheetOf([row('AAA')]))).toEqual([
      ['Aircraft', 'Treat as', 'Treat as, note', 'Due at, h', 'Due on', 'Left, h, from', 'Left, h, to', 'Paper'],
      ['ZQ-AAA', 'due', 'could become not yet due', '5238.4', '2027-03-09', '-3', '12.5', 'Logbook, volume 3'],
    ]);
  });
  it('begins with the mark of UTF-8 and keeps every sign', () => {
    const bytes = sheetCsv(sheetOf([row('AAA', { paper: text('Großes „Buch“, 3; "x"\nzweite Zeile') })]));
    expect([...bytes.slice(0, 3)]).toEqual([0xef, 0xbb, 0xbf]);
    expect(csvOf(sheetOf([row('AAA', { paper: text('Großes „Buch“, 3; "x"\nzweite Zeile') })]))[1]!.at(-1)).toBe(
      'Großes „Buch“, 3; "x"\nzweite Zeile',
    );
  });
  it('mixed units take a column of their own', () => {
    const landings: Cell = { is: 'quantity', value: 5238, unit: 'landings', places: 0, text: '5 238' };
    const [head, one, two] = csvOf(sheetOf([row('AAA'), row('BBB', { at: landings })]));
    const at = head!.indexOf('Due at');
    expect(head!.slice(at, at + 2)).toEqual(['Due at', 'Due at, unit']);
    expect([one!.slice(at, at + 2), two!.slice(at, at + 2)]).toEqual([
      ['5238.4', 'h'],
      ['5238', 'landings'],
    ]);
  });
  it.each(['=1+1', '+1', '-1', '@SUM(A1)', '\t=1', '\r=1', ' =1', '＝1'])('%j does not run as a formula', (words) => {
    const [, line] = csvOf(
      sheetOf([row('AAA', { aircraft: { is: 'link', text: words, href: '/' }, paper: text(words, words) })]),
    );
    for (const cell of [line![0], line!.at(-2), line!.at(-1)]) expect(cell).toBe(`'${words}`);
  });
  it('whatever the words are, they come back, and no cell of words begins a formula', () => {
    fc.assert(
      fc.property(fc.array(fc.string({ unit: 'grapheme' }), { minLength: 1, maxLength: 20 }), (all) => {
        const lines = csvOf(sheetOf(all.map((w, i) => row(String(i), { paper: text(`x${w}`, w) }))));
        for (const [i, w] of all.entries()) {
          const [paper, note] = lines[i + 1]!.slice(-2);
          if (all.some(Boolean)) {
            expect(paper).toBe(`x${w}`);
            expect([w, `'${w}`]).toContain(note);
            expect(note).not.toMatch(/^\s*[=+\-@]/);
          }
        }
      }),
    );
  });
});

describe('XLSX, read back with exceljs', () => {
  it('holds real figures and days, words that never run, and what the sheet says', async () => {
    const bytes = await sheetXlsx(sheetOf([row('AAA', { paper: text('=1+1') })]));
    const book = new ExcelJS.Workbook();
    await book.xlsx.load(bytes.buffer as ArrayBuffer);
    const leaf = book.getWorksheet('What falls due')!;
    const head = leaf.getRow(1).values as string[];
    const at = (name: string) => leaf.getRow(2).getCell(head.indexOf(name));
    expect(at('Due at, h').value).toBe(5238.4);
    expect(at('Due at, h').numFmt).toBe('#,##0.0');
    expect(at('Due on').value).toEqual(new Date('2027-03-09T00:00:00Z'));
    expect(at('Left, h, from').value).toBe(-3);
    expect(at('Treat as').value).toBe('due');
    expect([at('Paper').value, at('Paper').type]).toEqual(['=1+1', ExcelJS.ValueType.String]);
    const about = book.getWorksheet('About this sheet')!;
    const said = about.getColumn(2).values.join('\n');
    for (const words of ['Two aircraft fall due.', 'entry 512', '17 of 2 000', 'approve nothing'])
      expect(said).toContain(words);
  });
  it('two tables of one long title take two leaves', async () => {
    const block = sheetOf([row('AAA')]).blocks[0] as TableBlock;
    const title = 'Compliance: left inboard spar [W-14/2] of a long name';
    const bytes = await sheetXlsx(
      sheetOf([], {
        blocks: [
          { ...block, title },
          { ...block, title },
        ],
      }),
    );
    const book = new ExcelJS.Workbook();
    await book.xlsx.load(bytes.buffer as ArrayBuffer);
    expect(new Set(book.worksheets.map((w) => w.name)).size).toBe(3);
  });
  it('the same sheet gives the same cells, and an empty one a heading', async () => {
    const book = new ExcelJS.Workbook();
    await book.xlsx.load((await sheetXlsx(sheetOf([]))).buffer as ArrayBuffer);
    expect(book.worksheets[0]!.rowCount).toBe(1);
    expect(csvOf(sheetOf([])).length).toBe(1);
  });
});

describe.skipIf(!found)('PDF, read with pdftotext (not run where it is missing)', () => {
  const rows = Array.from({ length: 150 }, (_, i) => row(String(i).padStart(3, '0')));
  it('has every row once, its heads on each page, numbered pages, the caution once', async () => {
    const words = wordsOf(await sheetPdf(sheetOf(rows)));
    const pages = words.split('\f').filter((p) => p.trim());
    expect(pages.length).toBeGreaterThan(3);
    for (const r of rows) expect(words.split(`ZQ-${r.id}`).length, r.id).toBe(2);
    pages.forEach((p, i) => {
      expect(p).toContain(`page ${i + 1} of ${pages.length}`);
      if (p.includes('ZQ-')) expect(p).toContain('Due at');
    });
    expect(words.split('approve nothing').length).toBe(2);
    for (const w of ['entry 512', 'Field Structures', 'Two aircraft fall due.', '17 of 2 000'])
      expect(words).toContain(w);
  });
  it('never leaves the head of a long table at the foot of a page, wherever the table before it ends', async () => {
    const tall = { paper: text('Logbook, volume 3, page 41, as copied. '.repeat(12), 'and said again. '.repeat(20)) };
    const high = rows.slice(0, 60).map((r) => ({ ...r, cells: { ...r.cells, ...tall } }));
    const long = sheetOf(high).blocks[0] as TableBlock;
    for (let before = 1; before <= 22; before++) {
      const paragraphs = Array.from({ length: before }, (_, i) => `Line ${i + 1} before.`);
      const prose = { block: 'prose' as const, title: 'Before', paragraphs };
      const pages = wordsOf(await sheetPdf(sheetOf([], { blocks: [prose, long] }))).split('\f');
      for (const p of pages) if (p.includes('What falls due')) expect(p, `${before} lines`).toContain('ZQ-000');
    }
  });
  it('says on each page that the data is invented, and only where it is', async () => {
    const provenance = { known: 'invented', evidence: 'copy', invented: true } as const;
    const pages = wordsOf(await sheetPdf(sheetOf(rows, { provenance })))
      .split('\f')
      .filter((p) => p.trim());
    expect(pages.length).toBeGreaterThan(3);
    for (const p of pages) expect(p).toContain('All data is invented');
    expect(wordsOf(await sheetPdf(sheetOf(rows)))).not.toContain('invented');
  });
  it('keeps words that are far too long on the page', async () => {
    const long = 'Consolidated Structures and Restoration Works of the Upper Valley, Limited '.repeat(12);
    const pdf = await sheetPdf(
      sheetOf([row('AAA', { paper: text(long, long) }), row('BBB')], { title: long, because: long }),
    );
    const boxes = spawnSync('pdftotext', ['-bbox', '-', '-'], { input: pdf }).stdout.toString();
    const edges = [...boxes.matchAll(/<word xMin="([\d.]+)" yMin="[\d.]+" xMax="([\d.]+)" yMax="([\d.]+)"/g)];
    expect(edges.length).toBeGreaterThan(50);
    for (const [, left, right, bottom] of edges) {
      expect(Number(left)).toBeGreaterThan(20);
      expect(Number(right)).toBeLessThan(842);
      expect(Number(bottom)).toBeLessThan(595);
    }
  });
  it('never breaks a figure in two, however narrow the columns beside it must be', async () => {
    const crowd = Object.fromEntries(
      Array.from({ length: 9 }, (_, i) => [`c${i}`, text('Electrical crack check of six fastener holes')]),
    );
    const figure: Cell = { is: 'quantity', value: 12_500, unit: 'h', places: 1, text: '12\u202f500.0' };
    const sheet = sheetOf([row('AAA', { ...crowd, at: figure })]);
    const block = sheet.blocks[0] as TableBlock;
    const columns = [
      ...block.columns,
      ...Object.keys(crowd).map((key) => ({ key, title: key, align: 'left' as const })),
    ];
    expect(wordsOf(await sheetPdf({ ...sheet, blocks: [{ ...block, columns }] }))).toContain('12 500.0');
  });
  it('has the same bytes every time, and says so where nothing falls due', async () => {
    const [a, b] = [await sheetPdf(sheetOf(rows.slice(0, 3))), await sheetPdf(sheetOf(rows.slice(0, 3)))];
    expect(Buffer.compare(Buffer.from(a), Buffer.from(b))).toBe(0);
    expect(wordsOf(await sheetPdf(sheetOf([])))).toContain('Nothing falls due.');
  });
});
