import { type ReactNode, useId } from 'react';
import type { Fold } from '../../sheets/model.ts';
import { FoldButton, useFolds } from './fold.tsx';
import type { Row } from './order.ts';

/** Up to so many rows all are drawn, so that paper shows also what is folded on the screen. */
const DRAWN = 1000;

/** The rows of a table in folds, each under a line that opens it. */
export function FoldedRows({
  folds,
  rows,
  columns,
  draw,
}: {
  folds: readonly Fold[];
  rows: readonly Row[];
  columns: number;
  draw: (row: Row) => ReactNode;
}) {
  const id = useId();
  const all = useFolds(
    folds,
    rows.map((r) => r.id),
  );
  return all.map(({ fold, key, begin, end, open, turn }, i) => (
    <tbody key={key} id={`${id}-${i}`} className={open ? undefined : 'folded'}>
      <tr className="fold-line">
        <th scope="rowgroup" colSpan={columns}>
          <FoldButton fold={fold} open={open} controls={`${id}-${i}`} turn={turn} />
        </th>
      </tr>
      {open || rows.length <= DRAWN ? rows.slice(begin, end).map(draw) : null}
    </tbody>
  ));
}
