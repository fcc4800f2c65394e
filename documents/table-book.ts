import ExcelJS from 'exceljs';
import type { Sheet, TableBlock } from '../sheets/index.ts';
import { type FileColumn, type FileValue, fileColumns, tablesOf } from './table-cells.ts';

const DAY = 'd mmm yyyy';
const LONGEST_NAME = 31;
const WIDEST = 60;

const instant = (day: string): Date => new Date(`${day}T00:00:00Z`);
const written = (v: FileValue): string | number | Date | null =>
  v === null || typeof v !== 'object' ? v : instant(v.day);
const figures = (places: number): string => (places > 0 ? `#,##0.${'0'.repeat(places)}` : '#,##0');

/** The tables of a sheet as a workbook: real figures and days, units in the headings; what the sheet says on a leaf of its own. */
export async function sheetXlsx(sheet: Sheet): Promise<Uint8Array> {
  const book = new ExcelJS.Workbook();
  book.creator = 'Sparwright';
  book.created = instant(sheet.day);
  book.modified = instant(sheet.day);
  const names = new Set<string>();
  for (const block of tablesOf(sheet)) leaf(book.addWorksheet(nameOf(block.title, names)), block);
  about(book.addWorksheet(nameOf('About this sheet', names)), sheet);
  return new Uint8Array(await book.xlsx.writeBuffer());
}

function leaf(to: ExcelJS.Worksheet, block: TableBlock): void {
  const columns = fileColumns(block);
  to.addRow(columns.map((c) => c.heading)).font = { bold: true };
  for (const row of block.rows) to.addRow(columns.map((c) => written(c.of(row))));
  columns.forEach((c, i) => {
    const column = to.getColumn(i + 1);
    column.width = widthOf(c, block);
    column.eachCell((cell) => {
      if (cell.value instanceof Date) cell.numFmt = DAY;
      else if (typeof cell.value === 'number') cell.numFmt = figures(c.places ?? 0);
    });
  });
  to.views = [{ state: 'frozen', ySplit: 1 }];
  if (columns.length) to.autoFilter = { from: { row: 1, column: 1 }, to: { row: 1, column: columns.length } };
}
const widthOf = (c: FileColumn, block: TableBlock): number => {
  const lengths = block.rows.map((r) => {
    const v = c.of(r);
    return typeof v === 'string' ? v.length : 11;
  });
  return Math.min(WIDEST, Math.max(c.heading.length, ...lengths) + 2);
};

function about(to: ExcelJS.Worksheet, sheet: Sheet): void {
  const lines: [string, string][] = [
    ['Sheet', sheet.title],
    ...sheet.titleBlock.fields.map((f): [string, string] => [f.label, [f.value, f.small].filter(Boolean).join(', ')]),
    ['Answer', sheet.answer.map((s) => s.text).join('')],
    ['Why', sheet.because],
    ...(sheet.computing ? [['Still computed', sheet.computing] as [string, string]] : []),
    ...sheet.warnings.map((w): [string, string] => ['Note', w]),
    ['Caution', sheet.caution ?? ''],
  ];
  for (const line of lines.filter(([, words]) => words)) to.addRow(line);
  to.getColumn(1).width = 18;
  to.getColumn(2).width = 110;
  to.getColumn(2).alignment = { wrapText: true, vertical: 'top' };
}

/** Names of leaves: at most 31 characters, none of the signs that a workbook forbids, none twice. */
function nameOf(title: string, taken: Set<string>): string {
  const plain = title.replaceAll(/[\\/?*[\]:']/g, ' ').trim() || 'Table';
  for (let n = 1; ; n++) {
    const end = n === 1 ? '' : ` ${n}`;
    const name = `${plain.slice(0, LONGEST_NAME - end.length)}${end}`;
    if (taken.has(name.toLowerCase())) continue;
    taken.add(name.toLowerCase());
    return name;
  }
}
