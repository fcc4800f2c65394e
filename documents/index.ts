/** Sheets as paper. */
export { letterPdf } from './letter.ts';
