import { useMemo, useRef } from 'react';
import type { Sheet, TableBlock } from '../../../sheets/model.ts';
import { withQuery } from '../../api/sheets.ts';
import { shopPath } from '../../api/shops.ts';
import { Answer } from '../../parts/answer.tsx';
import { Caution, Warnings } from '../../parts/caution.tsx';
import { LongTable, type LongTableHandle } from '../../parts/long-table.tsx';
import { inOrder } from '../../parts/order.ts';
import { TitleBlock } from '../../parts/title-block.tsx';
import { Fresh } from './fresh.tsx';
import { Keys } from './keys.tsx';
import { SpanChooser } from './span-chooser.tsx';
import { usePageKeys } from './use-page-keys.ts';
import { useWanted } from './use-wanted.ts';
import { sortedBy } from './wanted.ts';

const FORMATS = ['pdf', 'csv', 'xlsx'] as const;

export function DueView({ shop, sheet, gone = false }: { shop: string; sheet: Sheet; gone?: boolean }) {
  const table = sheet.blocks.find((b) => b.block === 'table');
  const { from, to } = sheet.span ?? {};
  return (
    <>
      <TitleBlock block={sheet.titleBlock} number={sheet.number} />
      <Answer answer={sheet.answer} because={sheet.because} />
      <Warnings warnings={sheet.warnings} />
      <Fresh sheet={sheet} gone={gone} />
      <section className="sheet fleet fleet-list">
        <div className="due-head no-print">
          {sheet.span ? <SpanChooser span={sheet.span} /> : null}
          <div className="actions">
            {FORMATS.map((format) => (
              <a
                key={format}
                className="button"
                download
                href={withQuery(shopPath(shop, 'fleet', 'due'), { from, to, format })}
              >
                {format.toUpperCase()}
              </a>
            ))}
          </div>
        </div>
        {table ? <DueTable shop={shop} table={table} question={`${from} ${to}`} /> : null}
      </section>
      <Caution text={sheet.caution} />
    </>
  );
}

function DueTable({ shop, table, question }: { shop: string; table: TableBlock; question: string }) {
  const [wanted, want] = useWanted();
  const rows = useMemo(
    () => (wanted.sort ? inOrder(table.rows, wanted.sort, wanted.way) : table.rows),
    [table.rows, wanted.sort, wanted.way],
  );
  const list = useRef<LongTableHandle>(null);
  const enter = () => {
    list.current?.enter();
    return list.current !== null;
  };
  usePageKeys({ ArrowDown: enter, ArrowUp: enter });
  if (rows.length === 0) return <p className="empty">{table.empty}</p>;
  return (
    <>
      <LongTable
        name="due-within"
        block={table}
        rows={rows}
        sorting={wanted.sort ? { column: wanted.sort, direction: wanted.way } : null}
        sort={(column) => want(sortedBy(wanted, column))}
        remember={`due ${shop}`}
        question={`${question} ${wanted.sort} ${wanted.way}`}
        handle={list}
      />
      <Keys />
    </>
  );
}
