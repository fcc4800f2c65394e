import { defaultRangeExtractor, type Range, useVirtualizer } from '@tanstack/react-virtual';
import { type RefObject, useCallback, useEffect, useLayoutEffect, useRef, useState } from 'react';
import { flushSync } from 'react-dom';
import type { Row } from './order.ts';

/** Up to here all rows are drawn, so that the browser's own search finds them. */
const ALL_UP_TO = 100;
const ROW_PX = 58;
const HEAD_PX = 45;
const BEYOND = 6;
/** Before the first look at the page, and where there is no page: enough rows to begin with. */
const FIRST_LOOK = { width: 1000, height: 700 };

type Drawn =
  | { readonly is: 'row'; readonly row: Row; readonly index: number }
  | { readonly is: 'space'; readonly key: string; readonly height: number };

/** On paper there is no scrolling: all rows are drawn before the page is printed; then it stands where it stood. */
function usePrinting(region: RefObject<HTMLElement | null>): boolean {
  const [printing, setPrinting] = useState(false);
  useEffect(() => {
    let top = 0;
    const begin = () => {
      top = region.current?.scrollTop ?? 0;
      flushSync(() => setPrinting(true));
    };
    const end = () => {
      flushSync(() => setPrinting(false));
      region.current?.scrollTo(0, top);
    };
    window.addEventListener('beforeprint', begin);
    window.addEventListener('afterprint', end);
    return () => {
      window.removeEventListener('beforeprint', begin);
      window.removeEventListener('afterprint', end);
    };
  }, [region]);
  return printing;
}

/** The rows in sight, with spaces for those that are not. The row at `keep` is always drawn: it may hold the focus. */
export function useDrawnRows(rows: readonly Row[], keep: number) {
  const region = useRef<HTMLDivElement>(null);
  const head = useRef<HTMLTableRowElement>(null);
  const [headHeight, setHeadHeight] = useState(HEAD_PX);
  const printing = usePrinting(region);
  const all = printing || rows.length <= ALL_UP_TO;
  useLayoutEffect(() => setHeadHeight(head.current?.offsetHeight ?? HEAD_PX), []);
  const rangeExtractor = useCallback(
    (range: Range) => [...new Set([...defaultRangeExtractor(range), keep])].sort((a, b) => a - b),
    [keep],
  );
  const virtual = useVirtualizer<HTMLDivElement, HTMLTableRowElement>({
    count: rows.length,
    enabled: !all,
    getScrollElement: () => region.current,
    estimateSize: () => ROW_PX,
    getItemKey: (i) => rows[i]?.id ?? i,
    scrollMargin: headHeight,
    overscan: BEYOND,
    initialRect: FIRST_LOOK,
    rangeExtractor,
  });
  return {
    region,
    head,
    measure: virtual.measureElement,
    items: all ? rows.map((row, index): Drawn => ({ is: 'row', row, index })) : withSpaces(rows, virtual, headHeight),
  };
}

function withSpaces(
  rows: readonly Row[],
  virtual: ReturnType<typeof useVirtualizer<HTMLDivElement, HTMLTableRowElement>>,
  from: number,
): readonly Drawn[] {
  const out: Drawn[] = [];
  let end = from;
  const space = (to: number) => {
    if (to > end) out.push({ is: 'space', key: `space ${out.length === 0 ? 'above' : end}`, height: to - end });
  };
  for (const item of virtual.getVirtualItems()) {
    const row = rows[item.index];
    if (!row) continue;
    space(item.start);
    out.push({ is: 'row', row, index: item.index });
    end = item.end;
  }
  space(from + virtual.getTotalSize());
  return out;
}
