import { type KeyboardEvent, memo, useCallback, useMemo, useRef } from 'react';
import type { PictureBlock, TableBlock } from '../../../sheets/model.ts';
import { LongTable, type LongTableHandle } from '../../parts/long-table.tsx';
import { inOrder } from '../../parts/order.ts';
import { Picture } from '../../parts/picture.tsx';
import { hiddenWords, readyOf, testFor } from './filter.ts';
import { Filters } from './filters.tsx';
import { Keys } from './keys.tsx';
import { Shown } from './shown.tsx';
import { usePageKeys } from './use-page-keys.ts';
import { useSearch } from './use-search.ts';
import { useWanted } from './use-wanted.ts';
import { isDated, isFiltered, sortedBy, unfiltered, writeWanted } from './wanted.ts';

const NO_ZONES: readonly never[] = [];
const Band = memo(Picture);

/** The year band, the filters and the list. What is wanted lives in the address; the words typed reach it soon after. */
export function FleetList({ shop, table, band }: { shop: string; table: TableBlock; band: PictureBlock | undefined }) {
  const [address, write] = useWanted();
  const search = useSearch(address.search, write);
  const { want } = search;
  const zones = band?.scene.zones ?? NO_ZONES;
  const wanted = useMemo(() => ({ ...address, search: search.words }), [address, search.words]);
  const ready = useMemo(
    () => (address.sort ? inOrder(table.rows, address.sort, address.way) : table.rows).map(readyOf),
    [table.rows, address.sort, address.way],
  );
  const shown = useMemo(() => ready.filter(testFor(wanted, zones)), [ready, wanted, zones]);
  const rows = useMemo(() => shown.map((r) => r.row), [shown]);
  const list = useRef<LongTableHandle>(null);
  const box = useRef<HTMLInputElement>(null);
  const sort = useCallback((column: string) => want(sortedBy(address, column)), [want, address]);
  const choosing = useMemo(
    () => ({ chosen: address.due, choose: (due: string) => want({ due, from: '', to: '' }) }),
    [address.due, want],
  );
  const all = () => want(unfiltered(address));
  const enter = () => {
    list.current?.enter();
    return list.current !== null;
  };
  const clear = () => {
    if (isFiltered(wanted)) all();
    return isFiltered(wanted);
  };
  usePageKeys({
    ArrowDown: enter,
    ArrowUp: enter,
    Escape: clear,
  });
  const onKeyDown = (e: KeyboardEvent) => {
    if (e.key !== 'Escape' || e.target === box.current || !isFiltered(wanted)) return;
    e.preventDefault();
    all();
  };
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: Escape shows all rows again, wherever within the list
    <div className="fleet" onKeyDown={onKeyDown}>
      {band ? (
        <section className="sheet wide no-print">
          <Band block={band} choosing={choosing} />
        </section>
      ) : null}
      <section className="sheet fleet-list">
        <Filters
          ready={ready}
          zones={zones}
          wanted={wanted}
          want={want}
          search={search}
          box={box}
          leave={() => list.current?.enter()}
        />
        <Shown
          shown={rows.length}
          of={table.rows.length}
          hidden={hiddenWords(ready, shown)}
          filtered={isFiltered(wanted)}
          dated={isDated(wanted)}
          all={all}
        />
        {rows.length ? (
          <LongTable
            name="who-is-due"
            block={table}
            rows={rows}
            sorting={address.sort ? { column: address.sort, direction: address.way } : null}
            sort={sort}
            remember={`fleet ${shop}`}
            question={writeWanted(wanted, new URLSearchParams()).toString()}
            handle={list}
          />
        ) : (
          <p className="empty">No aircraft is like this.</p>
        )}
        <Keys box={box} />
      </section>
    </div>
  );
}
