import type { Day } from '../engine/index.ts';

/** A cell as the file holds it; `text` is what a person would see. */
export type Cell = {
  readonly text: string;
  /** The stored result of a formula: read, marked, never worked out again. */
  readonly fromFormula?: true;
} & (
  | { readonly is: 'empty' }
  | { readonly is: 'text' }
  | { readonly is: 'number'; readonly value: number }
  | { readonly is: 'day'; readonly day: Day }
  | { readonly is: 'time'; readonly seconds: number }
  /** Cannot be read at all: a formula without a stored value, an error value. */
  | { readonly is: 'unreadable'; readonly why: string }
);

export interface Row {
  /** As the spreadsheet numbers it, from 1. */
  readonly row: number;
  readonly cells: readonly Cell[];
}

export interface Grid {
  readonly fileName: string;
  readonly format: 'csv' | 'xlsx';
  readonly encoding?: 'utf-8' | 'utf-16' | 'windows-1252';
  readonly delimiter?: string;
  readonly sheet?: string;
  /** All sheets that hold data, first to last. */
  readonly sheets: readonly string[];
  readonly rows: readonly Row[];
}

export const EMPTY: Cell = { is: 'empty', text: '' };
export const cellAt = (row: Row, column: number | undefined): Cell =>
  column === undefined ? EMPTY : (row.cells[column] ?? EMPTY);
export const isBlank = (row: Row): boolean => row.cells.every((c) => c.is === 'empty');

export const LIMITS = {
  file_bytes: 20 * 1024 * 1024,
  unpacked_bytes: 150 * 1024 * 1024,
  rows: 50_000,
  columns: 200,
} as const;
