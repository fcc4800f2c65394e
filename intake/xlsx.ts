import ExcelJS from 'exceljs';
import { dayFromNumber, hoursFromSeconds, isDay, Refusal } from '../engine/index.ts';
import { headerRowOf } from './columns.ts';
import { type Cell, EMPTY, type Grid, LIMITS, type Row } from './model.ts';
import { tooManyRows, tooWide } from './refusals.ts';
import { namesInZip } from './zip.ts';

const MS_PER_DAY = 86_400_000;
/** Serial 1462 of the 1900 calendar is serial 0 of the 1904 calendar. */
const DAYS_1904 = 1462;
const EPOCH_SERIAL = 25_569;
/** Rows among which headings are looked for. */
const TOP = 60;
/** Parts of a sheet that hold no log and may be made to grow without end. */
const UNREAD = [
  'dataValidations',
  'conditionalFormatting',
  'mergeCells',
  'hyperlinks',
  'drawing',
  'legacyDrawing',
  'picture',
  'tableParts',
  'extLst',
];

/** @throws Refusal `intake.macros`, `intake.not-a-spreadsheet`, `intake.broken`, `intake.unpacks-too-large`, `intake.sheet-unknown`, `intake.no-data`, `intake.too-many-rows`, `intake.too-wide` */
export async function readXlsx(bytes: Uint8Array, fileName: string, sheetName?: string): Promise<Grid> {
  const names = namesInZip(bytes);
  if (/\.(xlsm|xltm|xlam|xlsb)$/i.test(fileName) || names.some((n) => /vbaproject/i.test(n)))
    throw new Refusal('intake.macros', {
      given: `"${fileName}" is a spreadsheet with macros`,
      allowed: '.xlsx without macros, or CSV',
      remedy: 'Save it as .xlsx (without macros) or CSV and send that',
    });
  if (!names.some((n) => /^xl\/workbook\.xml$/i.test(n)))
    throw new Refusal('intake.not-a-spreadsheet', {
      given: `"${fileName}" is a package, but no .xlsx spreadsheet`,
      allowed: 'CSV text or an .xlsx spreadsheet',
      remedy: 'Save the log as .xlsx or CSV and send that',
    });
  const book = new ExcelJS.Workbook();
  try {
    const copy = new Uint8Array(bytes).buffer as ArrayBuffer;
    await book.xlsx.load(copy as unknown as ExcelJS.Buffer, { ignoreNodes: UNREAD });
  } catch (e) {
    throw new Refusal('intake.broken', {
      given: `"${fileName}": ${(e as Error).message}`,
      allowed: 'a whole .xlsx file',
      remedy: 'Open it in the spreadsheet program, save it again as .xlsx or CSV, and send that',
    });
  }
  const filled = book.worksheets.filter((s) => s.actualRowCount > 0);
  const sheets = filled.map((s) => s.name);
  const is1904 = Boolean((book.properties as { date1904?: boolean }).date1904);
  const sheet =
    sheetName === undefined ? likeliest(filled, is1904, fileName) : filled.find((s) => s.name === sheetName);
  if (!sheet && sheetName !== undefined)
    throw new Refusal('intake.sheet-unknown', {
      given: `Sheet "${sheetName}" of "${fileName}"`,
      allowed: sheets.map((s) => `"${s}"`).join(', ') || 'a sheet that holds data',
      remedy: 'Choose one of these sheets',
    });
  if (!sheet)
    throw new Refusal('intake.no-data', {
      given: `"${fileName}" holds no rows`,
      allowed: 'a sheet with a log on it',
      remedy: 'Look whether this is the right file',
    });
  if (sheet.actualRowCount > LIMITS.rows + 1) throw tooManyRows(fileName);
  const rows = rowsOf(sheet, is1904, fileName);
  return { fileName, format: 'xlsx', sheet: sheet.name, sheets, rows };
}

/** The first sheet with the headings of a log, for a cover page often comes before it; else the first with data. */
function likeliest(filled: readonly ExcelJS.Worksheet[], is1904: boolean, fileName: string) {
  const small = filled.filter((s) => s.actualRowCount <= LIMITS.rows + 1);
  if (small.length < 2) return filled[0];
  const headed = small.find((s) => {
    const rows = rowsOf(s, is1904, fileName, TOP);
    return headerRowOf({ fileName, format: 'xlsx', sheets: [], rows }) > 0;
  });
  return headed ?? filled[0];
}

function rowsOf(sheet: ExcelJS.Worksheet, is1904: boolean, fileName: string, to = Number.POSITIVE_INFINITY): Row[] {
  const rows: Row[] = [];
  sheet.eachRow((r, row) => {
    if (row > to) return;
    const cells: Cell[] = [];
    r.eachCell((c, column) => {
      if (column > LIMITS.columns) throw tooWide(fileName);
      while (cells.length < column - 1) cells.push(EMPTY);
      cells.push(cellOf(c, is1904));
    });
    rows.push({ row, cells });
  });
  return rows;
}

function cellOf(c: ExcelJS.Cell, is1904: boolean): Cell {
  const value = c.value;
  if (value && typeof value === 'object' && ('formula' in value || 'sharedFormula' in value)) {
    const result = (value as { result?: unknown }).result;
    if (result === undefined || result === null || result === '')
      return { is: 'unreadable', text: '', fromFormula: true, why: 'a formula without a stored value' };
    return { ...plain(result, c, is1904), fromFormula: true };
  }
  return plain(value, c, is1904);
}

function plain(value: unknown, c: ExcelJS.Cell, is1904: boolean): Cell {
  if (value === null || value === undefined) return EMPTY;
  if (typeof value === 'number') return { is: 'number', value, text: String(value) };
  if (typeof value === 'string') return value.trim() === '' ? EMPTY : { is: 'text', text: value };
  if (typeof value === 'boolean') return { is: 'text', text: value ? 'TRUE' : 'FALSE' };
  if (value instanceof Date) return dated(value, c.numFmt ?? '', is1904);
  if (typeof value === 'object' && 'error' in value)
    return { is: 'unreadable', text: String(value.error), why: `the error value ${String(value.error)}` };
  const text = c.text;
  return text.trim() === '' ? EMPTY : { is: 'text', text };
}

/** A number shown as a date or as a time: which of the two its format tells. */
function dated(value: Date, format: string, is1904: boolean): Cell {
  const days = value.getTime() / MS_PER_DAY;
  const serial = days + EPOCH_SERIAL - (is1904 ? DAYS_1904 : 0);
  const bare = format.replace(/"[^"]*"|\\./g, '');
  const showsDay = /[dy]/i.test(bare.replace(/\[[^\]]*\]/g, ''));
  if (/\[h+\]|\[m+\]/i.test(bare) || (!showsDay && /[hs]/i.test(bare)) || (!showsDay && serial < 1)) {
    const seconds = Math.round(serial * 86_400);
    const [h, m, s] = [Math.floor(hoursFromSeconds(seconds)), Math.floor(seconds / 60) % 60, seconds % 60];
    const two = (n: number) => String(n).padStart(2, '0');
    return { is: 'time', seconds, text: `${h}:${two(m)}${s ? `:${two(s)}` : ''}` };
  }
  const day = dayFromNumber(days);
  if (!isDay(day) || (!is1904 && serial < 61))
    return { is: 'unreadable', text: String(serial), why: 'a date outside 1900-03-01 to 2199-12-31' };
  return { is: 'day', day, text: day };
}
