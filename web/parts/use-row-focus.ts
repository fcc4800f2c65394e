import { type FocusEvent, type KeyboardEvent, useLayoutEffect, useRef, useState } from 'react';
import type { Row } from './order.ts';

const PAGE_OF_ROWS = 10;
/** Which row of a table was looked at last, while another page is open. */
const lastSeen = new Map<string, string>();

const linkOf = (body: HTMLElement | null, id: string): HTMLElement | null =>
  body?.querySelector(`tr[data-row="${CSS.escape(id)}"] a`) ?? null;

/** At once, and once more when the rows around it have been measured. */
function intoSight(body: HTMLElement | null, id: string): void {
  const show = () => linkOf(body, id)?.scrollIntoView({ block: 'nearest', inline: 'nearest' });
  show();
  requestAnimationFrame(show);
}

/** One row is on the way of the Tab key; the arrow keys, Home and End choose which. It stays chosen when rows move. */
export function useRowFocus(rows: readonly Row[], remember: string, question: string) {
  const body = useRef<HTMLTableSectionElement>(null);
  const wanted = useRef<string | null>(null);
  const held = useRef<{ id: string; index: number } | null>(null);
  const [id, setId] = useState(() => lastSeen.get(remember) ?? '');
  const found = rows.findIndex((r) => r.id === id);
  // A row that is gone hands over to the one that took its place.
  const index = found >= 0 ? found : Math.max(0, Math.min(held.current?.index ?? 0, rows.length - 1));

  const choose = (row: Row | undefined) => {
    if (!row) return;
    lastSeen.set(remember, row.id);
    setId(row.id);
  };
  const [, again] = useState(0);
  const go = (to: number) => {
    const row = rows[Math.max(0, Math.min(to, rows.length - 1))];
    if (!row) return;
    wanted.current = row.id;
    choose(row);
    again((n) => n + 1);
  };
  const seenRows = useRef(rows);
  const seenQuestion = useRef<string | null>(null);
  // After every drawing: the row that is wanted may only now be there.
  useLayoutEffect(() => {
    const here = rows[index]?.id ?? '';
    const moved = seenRows.current !== rows;
    const asked = seenQuestion.current !== question;
    seenRows.current = rows;
    const first = seenQuestion.current === null;
    seenQuestion.current = question;
    const holds = held.current !== null;
    const lost = holds && document.activeElement === document.body;
    const target = wanted.current ?? (lost ? here : null);
    wanted.current = null;
    if (target !== null) linkOf(body.current, target)?.focus({ preventScroll: true });
    if (target !== null || (holds && moved)) intoSight(body.current, target ?? here);
    else if (first && index > 0) intoSight(body.current, here);
    else if (asked && !holds) body.current?.closest('.scrolls')?.scrollTo(0, 0);
    if (holds) held.current = { id: here, index };
  });

  const onKeyDown = (e: KeyboardEvent) => {
    if (e.altKey || e.ctrlKey || e.metaKey || !body.current?.contains(e.target as Node)) return;
    const to: Record<string, number> = {
      ArrowDown: index + 1,
      ArrowUp: index - 1,
      PageDown: index + PAGE_OF_ROWS,
      PageUp: index - PAGE_OF_ROWS,
      Home: 0,
      End: rows.length - 1,
    };
    const next = to[e.key];
    if (next === undefined) return;
    e.preventDefault();
    go(next);
  };
  const onFocus = (e: FocusEvent) => {
    const row = (e.target as HTMLElement).closest<HTMLElement>('tbody tr[data-row]');
    held.current = row ? { id: row.dataset.row ?? '', index } : null;
    const at = row ? rows.find((r) => r.id === row.dataset.row) : undefined;
    if (at && at.id !== id) choose(at);
  };
  // Said only when a person leaves: a row that is taken away says nothing.
  const onBlur = () => {
    held.current = null;
  };
  return { body, index, go, onKeyDown, onFocus, onBlur };
}
