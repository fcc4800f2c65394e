import { memo } from 'react';
import { Link } from 'wouter';
import type { Cell, Column } from '../../sheets/model.ts';
import { CellView } from './cell.tsx';
import type { Row } from './order.ts';

/** One row: its first cell is its head and bears the link that the keys walk. */
export const Line = memo(function Line({
  row,
  index,
  columns,
  here,
  measure,
}: {
  row: Row;
  index: number;
  columns: readonly Column[];
  here: boolean;
  measure: (row: HTMLTableRowElement | null) => void;
}) {
  const [first, ...others] = columns;
  return (
    <tr ref={measure} data-index={index} data-row={row.id} aria-rowindex={index + 2}>
      <th scope="row">
        <First cell={first ? row.cells[first.key] : undefined} here={here} />
      </th>
      {others.map((c) => (
        <td key={c.key} className={c.align === 'right' ? 'n' : undefined}>
          <CellView cell={row.cells[c.key]} />
        </td>
      ))}
    </tr>
  );
});

function First({ cell, here }: { cell: Cell | undefined; here: boolean }) {
  if (cell?.is !== 'link') return <CellView cell={cell} />;
  return (
    <Link href={cell.href} tabIndex={here ? 0 : -1}>
      {cell.text}
    </Link>
  );
}
