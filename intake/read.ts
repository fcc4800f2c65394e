import { Refusal } from '../engine/index.ts';
import { readCsv } from './csv.ts';
import { type Grid, isBlank, LIMITS } from './model.ts';
import { readXlsx } from './xlsx.ts';

const startsWith = (bytes: Uint8Array, ...head: number[]) => head.every((b, i) => bytes[i] === b);

/**
 * Reads a file into a grid of cells, from what it holds and not from what it is called.
 *
 * @param sheet which sheet of a spreadsheet; absent: the first with data
 * @throws Refusal `intake.file-empty`, `intake.file-too-large`, `intake.not-a-spreadsheet`, `intake.old-format`,
 *   `intake.macros`, `intake.unpacks-too-large`, `intake.too-many-rows`, `intake.too-wide`, `intake.broken`,
 *   `intake.sheet-unknown`, `intake.no-data`
 */
export async function readGrid(bytes: Uint8Array, fileName: string, sheet?: string): Promise<Grid> {
  if (bytes.length === 0)
    throw new Refusal('intake.file-empty', {
      given: `"${fileName}" is empty`,
      allowed: 'a file with a log in it',
      remedy: 'Look whether this is the right file',
    });
  if (bytes.length > LIMITS.file_bytes)
    throw new Refusal('intake.file-too-large', {
      given: `"${fileName}" has ${(bytes.length / 1024 / 1024).toFixed(1)} MB`,
      allowed: `up to ${LIMITS.file_bytes / 1024 / 1024} MB`,
      remedy: 'Save only the sheet with the log as .xlsx or CSV, or divide it into several files',
    });
  if (startsWith(bytes, 0xd0, 0xcf, 0x11, 0xe0))
    throw new Refusal('intake.old-format', {
      given: `"${fileName}" is an old .xls file, or is locked by a password`,
      allowed: 'CSV text or an .xlsx spreadsheet without a password',
      remedy: 'Open it in the spreadsheet program, save it as .xlsx or CSV, and send that',
    });
  if (startsWith(bytes, 0x25, 0x50, 0x44, 0x46))
    throw new Refusal('intake.not-a-spreadsheet', {
      given: `"${fileName}" is a PDF`,
      allowed: 'CSV text or an .xlsx spreadsheet',
      remedy: 'Type its rows into a spreadsheet, or ask for the file it was printed from',
    });
  const grid = startsWith(bytes, 0x50, 0x4b) ? await readXlsx(bytes, fileName, sheet) : readCsv(bytes, fileName);
  if (grid.rows.every(isBlank))
    throw new Refusal('intake.no-data', {
      given: `"${fileName}" holds no rows`,
      allowed: 'a file with a log in it',
      remedy: 'Look whether this is the right file',
    });
  return grid;
}
