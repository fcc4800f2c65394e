import type { Cell, TableBlock } from '../../sheets/model.ts';

/** From the worse side to the better: sorting follows "treat as". Held against the engine's list by a test. */
export const WORST_FIRST = [
  'overdue',
  'due',
  'soon due',
  'not yet due',
  'done and repeating',
  'not affected',
  'ended',
] as const;

export type Direction = 'ascending' | 'descending';
export type Row = TableBlock['rows'][number];
/** "before further flight" comes before every figure. */
const before = (key: number | string): boolean => typeof key === 'string' && key.startsWith('before ');
const letters = new Intl.Collator('en', { numeric: true });

/** What a cell sorts by. A figure with two ends sorts by the end that comes first in this direction. */
function keyOf(cell: Cell | undefined, direction: Direction): number | string | null {
  switch (cell?.is) {
    case 'quantity':
      if (typeof cell.value === 'number') return cell.value;
      return direction === 'ascending' ? cell.value.low : cell.value.high;
    case 'day':
      return cell.day;
    case 'standing': {
      const rank = (WORST_FIRST as readonly string[]).indexOf(cell.worst);
      return Math.max(0, rank);
    }
    case 'due-line': {
      const first = cell.marks.find((m) => m.treatAs) ?? cell.marks[0];
      return first ? first.from : null;
    }
    case 'text':
    case 'link':
      return cell.text;
    default:
      return null;
  }
}

/** Rows by one column; empty cells last either way; equal rows keep their order. */
export function inOrder(rows: readonly Row[], column: string, direction: Direction): readonly Row[] {
  const keyed = rows.map((row) => ({ row, key: keyOf(row.cells[column], direction) }));
  return keyed
    .sort((a, b) => {
      if (a.key === null || b.key === null) return Number(a.key === null) - Number(b.key === null);
      const first = Number(before(b.key)) - Number(before(a.key));
      const way =
        first ||
        (typeof a.key === 'number' && typeof b.key === 'number'
          ? Math.sign(a.key - b.key)
          : letters.compare(String(a.key), String(b.key)));
      return direction === 'ascending' ? way : -way;
    })
    .map((k) => k.row);
}
