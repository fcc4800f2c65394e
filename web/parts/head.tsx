import type { Column } from '../../sheets/model.ts';
import type { Direction } from './order.ts';

export interface Sorting {
  readonly column: string;
  readonly direction: Direction;
}

/** The head of a column: a button that sorts by it. */
export function Head({
  column,
  sorting,
  sort,
}: {
  column: Column;
  sorting: Sorting | null;
  sort: (key: string) => void;
}) {
  const here = sorting?.column === column.key ? sorting.direction : undefined;
  return (
    <th scope="col" aria-sort={here} className={column.align === 'right' ? 'n' : undefined}>
      <button type="button" className="sort" onClick={() => sort(column.key)}>
        {column.title}
        {column.unit ? `, ${column.unit}` : ''}
        <Arrow direction={here} />
      </button>
    </th>
  );
}

function Arrow({ direction }: { direction: Direction | undefined }) {
  if (!direction) return null;
  return (
    <svg width="9" height="9" viewBox="0 0 9 9" aria-hidden="true">
      <path className="fill-ink" d={direction === 'ascending' ? 'M0 8L9 8L4.5 1Z' : 'M0 1L9 1L4.5 8Z'} />
    </svg>
  );
}
