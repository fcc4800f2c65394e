/** Import of 10,000 rows, from bytes to entries: CSV and XLSX. Printed; nothing is judged here. */
import ExcelJS from 'exceljs';
import { addDays, parseDay } from '../engine/index.ts';
import { entriesFrom, preview, readGrid, suggestMapping } from '../intake/index.ts';

const ROWS = 10_000;
const start = parseDay('1990-01-01');
const head = ['Date', 'Flight time', 'Total time', 'Landings', 'Use', 'Remarks'];
const rows = Array.from({ length: ROWS }, (_, i) => [
  addDays(start, i),
  1.2,
  Math.round((i + 1) * 12) / 10,
  2,
  ['private', 'tow', 'instruction'][i % 3]!,
  i % 300 === 299 ? 'Annual inspection' : '',
]);
const book = new ExcelJS.Workbook();
const sheet = book.addWorksheet('Log');
sheet.addRow(head);
for (const r of rows) sheet.addRow([new Date(`${r[0]}T00:00:00Z`), ...r.slice(1)]);
const files = [
  ['log.csv', new TextEncoder().encode([head, ...rows].map((r) => r.join(',')).join('\n'))],
  ['log.xlsx', new Uint8Array(await book.xlsx.writeBuffer())],
] as const;

const context = { subject: 'aircraft:bench', title: 'Log', evidence: 'copy', today: parseDay('2026-11-25') } as const;
for (const [name, bytes] of files) {
  const marks = [performance.now()];
  const grid = await readGrid(bytes, name);
  marks.push(performance.now());
  const mapping = suggestMapping(grid);
  marks.push(performance.now());
  const seen = preview(grid, mapping, context);
  marks.push(performance.now());
  const entries = entriesFrom(grid, mapping, context);
  marks.push(performance.now());
  const [read, suggest, look, make] = marks.slice(1).map((m, i) => Math.round(m - marks[i]!));
  console.log(
    `${name}: ${grid.rows.length} rows, ${seen.counts.accepted} accepted, ${entries.length} entries; ` +
      `read ${read} ms, mapping ${suggest} ms, preview ${look} ms, entries ${make} ms, in all ${Math.round(marks.at(-1)! - marks[0]!)} ms`,
  );
}
