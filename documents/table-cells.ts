import type { Bounds } from '../engine/index.ts';
import type { Cell, Column, Sheet, TableBlock } from '../sheets/index.ts';

/** What a cell is in a file: a figure, a day or words. A standing or a name that says more takes a column of its own. */
export type FileValue = number | { readonly day: string } | string | null;
export interface FileColumn {
  readonly heading: string;
  /** Figures behind the point; null where the column holds no figures. */
  readonly places: number | null;
  readonly of: (row: TableBlock['rows'][number]) => FileValue;
}

const isBounds = (v: number | Bounds): v is Bounds => typeof v !== 'number';
const wide = (c: Cell | undefined): boolean =>
  c?.is === 'quantity' && isBounds(c.value) && c.value.low !== c.value.high;
/** Without what binary fractions leave beyond twelve figures: 9.525, not 9.524999999999999. */
const figureIn = (v: number): number => Number(v.toPrecision(12));
const end = (c: Cell | undefined, side: 'low' | 'high'): FileValue =>
  c?.is === 'quantity' ? figureIn(isBounds(c.value) ? c.value[side] : c.value) : fileValue(c);

function fileValue(c: Cell | undefined): FileValue {
  if (!c) return null;
  switch (c.is) {
    case 'nothing':
    case 'due-line':
      return null;
    case 'quantity':
      return figureIn(isBounds(c.value) ? c.value.low : c.value);
    case 'day':
      return { day: c.day };
    case 'standing':
      return c.worst;
    default:
      return c.text;
  }
}
const noteOf = (c: Cell | undefined): FileValue => (c && 'small' in c && c.small ? c.small : null);

/** The columns of a table as a file has them: one kind of value each, the unit in the heading; pictures stay away. */
export function fileColumns(block: TableBlock): FileColumn[] {
  return block.columns.flatMap((column) => columnsOf(column, block));
}
function columnsOf(column: Column, block: TableBlock): FileColumn[] {
  const cells = block.rows
    .map((r) => r.cells[column.key])
    .filter((c): c is Cell => c !== undefined && c.is !== 'nothing');
  if (cells.length && cells.every((c) => c.is === 'due-line')) return [];
  const figures = cells.flatMap((c) => (c.is === 'quantity' ? [c] : []));
  const units = [...new Set(figures.map((c) => c.unit))];
  const unit = column.unit ?? (units.length === 1 ? units[0] : undefined);
  const heading = unit ? `${column.title}, ${unit}` : column.title;
  const places = figures.length ? Math.max(...figures.map((c) => c.places)) : null;
  const one = (name: string, of: (c: Cell | undefined) => FileValue, n: number | null = places): FileColumn => ({
    heading: name,
    places: n,
    of: (row) => of(row.cells[column.key]),
  });
  const figure = cells.some(wide)
    ? [one(`${heading}, from`, (c) => end(c, 'low')), one(`${heading}, to`, (c) => end(c, 'high'))]
    : [one(heading, fileValue)];
  const mixed =
    units.length > 1 ? [one(`${column.title}, unit`, (c) => (c?.is === 'quantity' ? c.unit : null), null)] : [];
  const notes = cells.some((c) => noteOf(c) !== null) ? [one(`${column.title}, note`, noteOf, null)] : [];
  return [...figure, ...mixed, ...notes];
}

export const tablesOf = (sheet: Sheet): TableBlock[] =>
  sheet.blocks.flatMap((b) => {
    if (b.block === 'table') return [b];
    if (b.block === 'cards') return [b.table];
    return b.block === 'picture' && b.inFiles && b.scene.table ? [b.scene.table] : [];
  });
