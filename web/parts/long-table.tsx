import { type Ref, useId, useImperativeHandle } from 'react';
import type { TableBlock } from '../../sheets/model.ts';
import { Head, type Sorting } from './head.tsx';
import { Line } from './long-table-line.tsx';
import type { Row } from './order.ts';
import { useDrawnRows } from './use-drawn-rows.ts';
import { useRowFocus } from './use-row-focus.ts';

export interface LongTableHandle {
  /** Puts the focus on the row that was looked at last, else on the first. */
  readonly enter: () => void;
}

/**
 * A table of many rows, of which only those in sight are drawn. Its rows are walked with the arrow keys; Enter opens
 * the link in the first cell. Row numbers and their count are said to screen readers; on paper all rows stand.
 */
export function LongTable({
  name,
  block,
  rows,
  sorting,
  sort,
  remember,
  question,
  handle,
}: {
  /** Names the widths of its columns in the styles. */
  name: string;
  block: TableBlock;
  /** The rows of the block that are to be shown, in their order. */
  rows: readonly Row[];
  sorting: Sorting | null;
  sort: (column: string) => void;
  /** Where the row that was looked at last is kept while another page is open. */
  remember: string;
  /** What the rows answer: another question begins at the top, the same one stays where it is. */
  question: string;
  handle?: Ref<LongTableHandle>;
}) {
  const id = useId();
  const focus = useRowFocus(rows, remember, question);
  const drawn = useDrawnRows(rows, focus.index);
  useImperativeHandle(handle, () => ({ enter: () => focus.go(focus.index) }));
  return (
    <>
      <h2 id={id}>{block.title}</h2>
      {/* biome-ignore lint/a11y/noStaticElementInteractions: keys of the rows within, which are links */}
      <div
        className={`scrolls long ${name}`}
        ref={drawn.region}
        onKeyDown={focus.onKeyDown}
        onFocus={focus.onFocus}
        onBlur={focus.onBlur}
      >
        <table aria-labelledby={id} aria-rowcount={rows.length + 1}>
          <colgroup>
            {block.columns.map((c) => (
              <col key={c.key} className={`c-${c.key}`} />
            ))}
          </colgroup>
          <thead>
            <tr aria-rowindex={1} ref={drawn.head}>
              {block.columns.map((c) => (
                <Head key={c.key} column={c} sorting={sorting} sort={sort} />
              ))}
            </tr>
          </thead>
          <tbody ref={focus.body}>
            {drawn.items.map((item) =>
              item.is === 'space' ? (
                // biome-ignore lint/a11y/noAriaHiddenOnFocusable: a row of a plain table takes no focus
                <tr key={item.key} aria-hidden="true" className="space">
                  <td colSpan={block.columns.length} height={item.height} />
                </tr>
              ) : (
                <Line
                  key={item.row.id}
                  row={item.row}
                  index={item.index}
                  columns={block.columns}
                  here={item.index === focus.index}
                  measure={drawn.measure}
                />
              ),
            )}
          </tbody>
        </table>
      </div>
    </>
  );
}
