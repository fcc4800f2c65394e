import type { FastifyReply } from 'fastify';
import { sheetCsv, sheetPdf, sheetXlsx } from '../documents/index.ts';
import type { Sheet } from '../sheets/index.ts';

export const FILE_FORMATS = ['pdf', 'csv', 'xlsx'] as const;
export type FileFormat = (typeof FILE_FORMATS)[number];

const TYPES: Readonly<Record<FileFormat, string>> = {
  pdf: 'application/pdf',
  csv: 'text/csv; charset=utf-8',
  xlsx: 'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet',
};
const MAKE = { pdf: sheetPdf, csv: sheetCsv, xlsx: sheetXlsx } as const;

/** A sheet as a file. */
export const fileOf = async (sheet: Sheet, format: FileFormat): Promise<Uint8Array> => MAKE[format](sheet);

/** A sheet as the page reads it, or as a file to keep under this name and the day of the sheet. */
export async function sendSheet(reply: FastifyReply, sheet: Sheet, format: FileFormat | 'sheet', name: string) {
  if (format === 'sheet') return sheet;
  const plain = `${name}-${sheet.day}`.replaceAll(/[^A-Za-z0-9._-]+/g, '-');
  return reply
    .header('content-type', TYPES[format])
    .header('content-disposition', `attachment; filename="${plain}.${format}"`)
    .send(Buffer.from(await fileOf(sheet, format)));
}
