import { parse } from 'csv-parse/sync';
import { Refusal } from '../engine/index.ts';
import { type Cell, EMPTY, type Grid, LIMITS, type Row } from './model.ts';
import { tooManyRows, tooWide } from './refusals.ts';

const DELIMITERS = ['\t', ';', ','] as const;

const records = (text: string, delimiter: string, to?: number): string[][] =>
  parse(text, {
    delimiter,
    record_delimiter: ['\r\n', '\n', '\r'],
    relax_column_count: true,
    relax_quotes: true,
    ...(to ? { to } : {}),
  });

/** The separator whose rows agree best on their width; tab before semicolon before comma where they agree alike. */
export function sniffDelimiter(text: string): string {
  let best = { delimiter: ',', share: 0 };
  for (const delimiter of DELIMITERS) {
    if (!text.includes(delimiter)) continue;
    let rows: string[][];
    try {
      rows = records(text, delimiter, 60).filter((r) => r.some((f) => f !== ''));
    } catch {
      continue;
    }
    const widths = new Map<number, number>();
    for (const r of rows) widths.set(r.length, (widths.get(r.length) ?? 0) + 1);
    const [width, count] = [...widths].filter(([w]) => w > 1).sort((a, b) => b[1] - a[1])[0] ?? [0, 0];
    const share = width > 1 ? count / rows.length : 0;
    if (share > best.share) best = { delimiter, share };
  }
  return best.delimiter;
}

/**
 * Windows-1252 where it differs from Latin-1, 0x80 to 0x9f, as the WHATWG Encoding Standard maps it. Written out because
 * the decoder of some Node.js releases reads these bytes as control characters.
 */
const HIGH = '€\u0081‚ƒ„…†‡ˆ‰Š‹Œ\u008dŽ\u008f\u0090‘’“”•–—˜™š›œ\u009džŸ';
const windows1252 = (bytes: Uint8Array): string =>
  Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength)
    .toString('latin1')
    .replace(/[\u0080-\u009f]/g, (c) => HIGH[c.charCodeAt(0) - 0x80]!);

function decode(bytes: Uint8Array): { text: string; encoding: NonNullable<Grid['encoding']> } {
  const utf16 = (label: string) => ({ text: new TextDecoder(label).decode(bytes), encoding: 'utf-16' as const });
  if (bytes[0] === 0xff && bytes[1] === 0xfe) return utf16('utf-16le');
  if (bytes[0] === 0xfe && bytes[1] === 0xff) return utf16('utf-16be');
  const head = bytes.subarray(0, 400);
  const zeros = [0, 0];
  head.forEach((b, i) => {
    if (b === 0) zeros[i % 2]!++;
  });
  if (zeros[1]! > head.length / 4 && zeros[0] === 0) return utf16('utf-16le');
  if (zeros[0]! > head.length / 4 && zeros[1] === 0) return utf16('utf-16be');
  try {
    return { text: new TextDecoder('utf-8', { fatal: true }).decode(bytes), encoding: 'utf-8' };
  } catch {
    return { text: windows1252(bytes), encoding: 'windows-1252' };
  }
}

const cellOf = (field: string): Cell => (field.trim() === '' ? EMPTY : { is: 'text', text: field });

/** @throws Refusal `intake.not-a-spreadsheet`, `intake.broken`, `intake.too-many-rows`, `intake.too-wide` */
export function readCsv(bytes: Uint8Array, fileName: string): Grid {
  const { text: decoded, encoding } = decode(bytes);
  // biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what tells text from binary
  if (/[\u0000-\u0008\u000e-\u001f]/.test(decoded))
    throw new Refusal('intake.not-a-spreadsheet', {
      given: `"${fileName}" holds binary data`,
      allowed: 'CSV text or an .xlsx spreadsheet',
      remedy: 'Save the log as .xlsx or CSV and send that',
    });
  const told = /^sep=(.)\r?\n/i.exec(decoded);
  const text = told ? decoded.slice(told[0].length) : decoded;
  const delimiter = told ? told[1]! : sniffDelimiter(text);
  let read: string[][];
  try {
    read = records(text, delimiter, LIMITS.rows + 2);
  } catch (e) {
    throw new Refusal('intake.broken', {
      given: `"${fileName}": ${(e as Error).message}`,
      allowed: 'CSV whose quotes are closed',
      remedy: 'Correct this line, or save the log again as CSV or .xlsx',
    });
  }
  const shift = told ? 2 : 1;
  const rows = read.map((fields, i): Row => ({ row: i + shift, cells: fields.map(cellOf) }));
  if (rows.length > LIMITS.rows + 1) throw tooManyRows(fileName);
  if (rows.some((r) => r.cells.length > LIMITS.columns)) throw tooWide(fileName);
  return { fileName, format: 'csv', encoding, delimiter, sheets: [], rows };
}
