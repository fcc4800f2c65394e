import { deflateRawSync } from 'node:zlib';
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

/** A package with parts of stated size, as a zip directory lists them. */
export function zip(parts: readonly { name: string; data: Uint8Array; says?: number }[]): Uint8Array {
  const [local, central]: [Buffer[], Buffer[]] = [[], []];
  let at = 0;
  for (const p of parts) {
    const packed = deflateRawSync(p.data);
    const name = Buffer.from(p.name);
    const head = Buffer.alloc(30);
    head.writeUInt32LE(0x04034b50, 0);
    head.writeUInt16LE(8, 8);
    head.writeUInt32LE(packed.length, 18);
    head.writeUInt32LE(p.says ?? p.data.length, 22);
    head.writeUInt16LE(name.length, 26);
    const entry = Buffer.alloc(46);
    entry.writeUInt32LE(0x02014b50, 0);
    entry.writeUInt16LE(8, 10);
    entry.writeUInt32LE(packed.length, 20);
    entry.writeUInt32LE(p.says ?? p.data.length, 24);
    entry.writeUInt16LE(name.length, 28);
    entry.writeUInt32LE(at, 42);
    local.push(head, name, packed);
    central.push(entry, name);
    at += 30 + name.length + packed.length;
  }
  const end = Buffer.alloc(22);
  end.writeUInt32LE(0x06054b50, 0);
  end.writeUInt16LE(parts.length, 10);
  end.writeUInt32LE(Buffer.concat(central).length, 12);
  end.writeUInt32LE(at, 16);
  return new Uint8Array(Buffer.concat([...local, ...central, end]));
}
