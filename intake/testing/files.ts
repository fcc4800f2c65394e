import ExcelJS from 'exceljs';
import { parseDay } from '../../engine/index.ts';
import type { IntakeContext } from '../context.ts';
import { entriesFrom, type Mapping, type Preview, preview, readGrid, suggestMapping } from '../index.ts';

export const context: IntakeContext = {
  subject: 'aircraft:1',
  title: 'Journey log',
  evidence: 'copy',
  today: parseDay('2026-11-25'),
};
export const utf8 = (text: string) => new TextEncoder().encode(text);
export const csv = (text: string) => readGrid(utf8(text), 'log.csv');

export async function xlsx(rows: readonly (readonly unknown[])[], is1904 = false, format?: Record<number, string>) {
  const book = new ExcelJS.Workbook();
  book.properties.date1904 = is1904;
  const sheet = book.addWorksheet('Log');
  for (const r of rows) sheet.addRow([...r]);
  for (const [column, numFmt] of Object.entries(format ?? {})) sheet.getColumn(Number(column)).numFmt = numFmt;
  return new Uint8Array(await book.xlsx.writeBuffer());
}

export async function seen(
  text: string,
  change: Partial<Mapping> = {},
  more: Partial<IntakeContext> = {},
): Promise<Preview> {
  const grid = await csv(text);
  return preview(grid, { ...suggestMapping(grid), ...change }, { ...context, ...more });
}
export async function taken(text: string, change: Partial<Mapping> = {}, more: Partial<IntakeContext> = {}) {
  const grid = await csv(text);
  return entriesFrom(grid, { ...suggestMapping(grid), ...change }, { ...context, ...more });
}
