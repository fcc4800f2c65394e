/** Sheets as paper, and their tables as files. */
export { letterPdf } from './letter.ts';
export { sheetXlsx } from './table-book.ts';
export { sheetCsv } from './table-csv.ts';
export { sheetPdf } from './table-paper.ts';
