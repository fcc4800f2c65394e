import { Fragment, useId, useState } from 'react';
import type { TableBlock } from '../../sheets/model.ts';
import { CellView } from './cell.tsx';
import { FoldedRows } from './folded-rows.tsx';
import { Head, type Sorting } from './head.tsx';
import { inOrder, type Row } from './order.ts';
import { Working } from './working.tsx';

const SHOWN = 200;

/** A table that sorts by its head; `why` opens the working of a row below it. Rows in folds stand unfolded once sorted. */
export function Table({ block, level = 2 }: { block: TableBlock; level?: 2 | 3 }) {
  const id = useId();
  const [sorting, setSorting] = useState<Sorting | null>(null);
  const [open, setOpen] = useState<readonly string[]>([]);
  const [all, setAll] = useState(false);
  const Title = level === 2 ? 'h2' : 'h3';
  const heading = <Title id={id}>{block.title}</Title>;
  if (block.rows.length === 0)
    return (
      <>
        {heading}
        <p className="empty">{block.empty}</p>
      </>
    );
  const sort = (key: string) =>
    setSorting((s) => ({
      column: key,
      direction: s?.column === key && s.direction === 'ascending' ? 'descending' : 'ascending',
    }));
  const toggle = (row: string) => setOpen((o) => (o.includes(row) ? o.filter((r) => r !== row) : [...o, row]));
  const ordered = sorting ? inOrder(block.rows, sorting.column, sorting.direction) : block.rows;
  const folds = sorting ? undefined : block.folds;
  const rows = all || folds ? ordered : ordered.slice(0, SHOWN);
  const workings = block.rows.some((r) => r.working?.length);
  const draw = (row: Row) => (
    <Fragment key={row.id}>
      <tr id={block.linked ? row.id : undefined}>
        {block.columns.map((c) => (
          <td key={c.key} className={c.align === 'right' ? 'n' : undefined}>
            <CellView cell={row.cells[c.key]} />
          </td>
        ))}
        {workings ? (
          <td>
            {row.working?.length ? (
              <button
                type="button"
                className="why"
                aria-expanded={open.includes(row.id)}
                aria-controls={`${id}-${row.id}`}
                onClick={() => toggle(row.id)}
              >
                why
              </button>
            ) : null}
          </td>
        ) : null}
      </tr>
      {row.working?.length ? (
        <tr className="opened fades" id={`${id}-${row.id}`} hidden={!open.includes(row.id)}>
          <td colSpan={block.columns.length + 1}>{open.includes(row.id) ? <Working steps={row.working} /> : null}</td>
        </tr>
      ) : null}
    </Fragment>
  );
  return (
    <>
      {heading}
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable by keyboard */}
      <section className="scrolls" aria-labelledby={id} tabIndex={0}>
        <table aria-labelledby={id}>
          <thead>
            <tr>
              {block.columns.map((c) => (
                <Head key={c.key} column={c} sorting={sorting} sort={sort} />
              ))}
              {workings ? (
                <th scope="col">
                  <span className="hidden-text">Working</span>
                </th>
              ) : null}
            </tr>
          </thead>
          {folds ? (
            <FoldedRows folds={folds} rows={rows} columns={block.columns.length + (workings ? 1 : 0)} draw={draw} />
          ) : (
            <tbody>{rows.map(draw)}</tbody>
          )}
        </table>
      </section>
      {rows.length < ordered.length ? (
        <button type="button" onClick={() => setAll(true)}>
          Show all {ordered.length} rows
        </button>
      ) : null}
    </>
  );
}
