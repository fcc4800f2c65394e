import { Fragment, type KeyboardEvent, useEffect, useRef, useState } from 'react';
import type { ShownLine } from '../../../sheets/page-lines.ts';
import type { PapersSheet, RowsRead, TypedRow, WrittenEntry } from '../../api/papers.ts';
import { readRows } from '../../api/papers.ts';
import { today } from '../../api/today.ts';
import { BusyButton } from '../../parts/busy-button.tsx';
import { ErrorNotice } from '../../parts/error-notice.tsx';
import { Input, Select } from '../../parts/field.tsx';
import { EVIDENCE } from '../aircraft/forms/common.tsx';
import { BeforeAfter } from './before-after.tsx';
import type { Book } from './scans.tsx';
import { useKept } from './use-kept.ts';
import { useWriting } from './use-writing.ts';

const COLUMNS = [
  { key: 'day', title: 'Day' },
  { key: 'flown', title: 'Flown, h' },
  { key: 'total', title: 'Total, h' },
  { key: 'landings', title: 'Landings' },
  { key: 'landings_total', title: 'Landings total' },
  { key: 'use', title: 'Use' },
  { key: 'remarks', title: 'Remarks' },
] as const;
const EMPTY: TypedRow = { day: '', flown: '', total: '', landings: '', landings_total: '', use: '', remarks: '' };
const isEmpty = (r: TypedRow): boolean => COLUMNS.every((c) => r[c.key].trim() === '');
interface Typed {
  readonly rows: readonly TypedRow[];
  readonly evidence: string;
  readonly day_order: string;
  readonly brought_h: string;
  readonly brought_landings: string;
  readonly close: Readonly<Record<string, string>>;
}
const START: Typed = {
  rows: [EMPTY],
  evidence: 'copy',
  day_order: 'day_first',
  brought_h: '',
  brought_landings: '',
  close: {},
};
const DAY_ORDERS = [
  { value: 'day_first', text: '31.12. (day first)' },
  { value: 'month_first', text: '12/31 (month first)' },
];
const CLOSING = [
  { value: '', text: 'stays open' },
  { value: 'reach', text: 'closed for these days' },
  { value: 'whole', text: 'closed whole' },
];

export const paperOf = (book: Book, sha256: string | null) => ({
  title: book.title.trim() || 'Paper without a title',
  ...(book.page.trim() ? { page: book.page.trim() } : {}),
  ...(sha256 ? { file_sha256: sha256 } : {}),
  ...(book.by.trim() ? { seen_by: book.by.trim(), seen_on: today() } : {}),
});

interface Props {
  readonly shop: string;
  readonly aircraft: string;
  readonly sheet: PapersSheet;
  readonly book: Book;
  readonly sha256: string | null;
}

/** Rows as in the paper logbook, typed by keyboard at speed and added up as one types. */
export function RowsGrid({ shop, aircraft, sheet, book, sha256 }: Props) {
  const kept = useKept<Typed>(`rows ${shop} ${aircraft}`, START);
  const typed = kept.value;
  const [read, setRead] = useState<RowsRead | null>(null);
  const [failed, setFailed] = useState<unknown>(null);
  const [said, setSaid] = useState('');
  const body = useRef<HTMLTableSectionElement>(null);
  const writing = useWriting(shop, aircraft, sheet.last, (numbers) => {
    setSaid(`Written: ${numbers.length} entries, ${numbers[0]} to ${numbers.at(-1)}. The answers are computed anew.`);
    kept.set({ ...START, evidence: typed.evidence, day_order: typed.day_order });
  });
  const asked = JSON.stringify({
    rows: typed.rows,
    paper: paperOf(book, sha256),
    evidence: typed.evidence,
    day_order: typed.day_order,
    brought: {
      ...(typed.brought_h.trim() ? { total_h: typed.brought_h } : {}),
      ...(/^\d+$/.test(typed.brought_landings.trim()) ? { landings: Number(typed.brought_landings) } : {}),
    },
    close: Object.entries(typed.close).flatMap(([entry, how]) => (how ? [{ entry: Number(entry), how }] : [])),
  });
  const empty = typed.rows.every(isEmpty);
  useEffect(() => {
    if (empty) {
      setRead(null);
      return;
    }
    let here = true;
    const wait = setTimeout(() => {
      readRows(shop, aircraft, JSON.parse(asked)).then(
        (r) => {
          if (!here) return;
          setRead(r);
          setFailed(null);
        },
        (e) => here && setFailed(e),
      );
    }, 180);
    return () => {
      here = false;
      clearTimeout(wait);
    };
  }, [shop, aircraft, asked, empty]);
  const change = (next: Typed) => {
    setSaid('');
    writing.reset();
    kept.set(next);
  };
  const setRows = (rows: readonly TypedRow[]) =>
    change({ ...typed, rows: isEmpty(rows.at(-1) ?? EMPTY) && rows.length > 0 ? rows : [...rows, EMPTY] });
  const cell = (row: number, column: number) =>
    body.current?.querySelector<HTMLInputElement>(`[data-cell="${row} ${column}"]`)?.focus();
  const keys = (e: KeyboardEvent, row: number, column: number) => {
    const end = column === COLUMNS.length - 1;
    if (e.key === 'Enter') {
      e.preventDefault();
      if (e.shiftKey) cell(column === 0 ? row - 1 : row, column === 0 ? COLUMNS.length - 1 : column - 1);
      else cell(end ? row + 1 : row, end ? 0 : column + 1);
    } else if (e.key === 'ArrowDown' || e.key === 'ArrowUp') {
      e.preventDefault();
      cell(row + (e.key === 'ArrowDown' ? 1 : -1), column);
    }
  };
  const entries = async (): Promise<readonly WrittenEntry[]> => {
    if (!book.title.trim()) throw new Error('Say which book this is, above: it is kept with each row.');
    const now = await readRows(shop, aircraft, JSON.parse(asked));
    setRead(now);
    const wrong = now.lines.filter((l) => l.reason);
    if (wrong.length)
      throw new Error(
        wrong.length === 1
          ? `Row ${wrong[0]?.row} cannot be written as it stands: ${wrong[0]?.reason}. Nothing is written until every row reads.`
          : `Rows ${wrong.map((l) => l.row).join(', ')} cannot be written as they stand; what is wrong stands under each. Nothing is written until every row reads.`,
      );
    if (!now.entries.length) throw new Error('Type a row first.');
    return now.entries;
  };
  const carried = typed.rows.map((_, i) => typed.rows.slice(0, i).findLast((r) => r.day.trim())?.day ?? '');
  const lineAt = (i: number) => read?.lines.find((l) => l.row === i + 1);
  return (
    <>
      <p className="hint">
        Brought forward: {read ? read.brought : 'what the record knows before the first row'}. Enter goes to the next
        cell; an empty day is the day above, a bare number a day of its month; 5.4, 5,4 and 5:24 are one.
      </p>
      <section className="scrolls" aria-label="Rows of the book">
        <table className="typed-rows">
          <thead>
            <tr>
              <th scope="col">Row</th>
              {COLUMNS.map((c) => (
                <th scope="col" key={c.key}>
                  {c.title}
                </th>
              ))}
            </tr>
          </thead>
          <tbody ref={body}>
            {typed.rows.map((r, i) => {
              const line = lineAt(i);
              return (
                // biome-ignore lint/suspicious/noArrayIndexKey: a row is its place on the page
                <Fragment key={i}>
                  <tr>
                    <th scope="row">{i + 1}</th>
                    {COLUMNS.map((c, k) => (
                      <td key={c.key} className={c.key}>
                        <input
                          data-cell={`${i} ${k}`}
                          aria-label={`${c.title}, row ${i + 1}`}
                          autoComplete="off"
                          list={c.key === 'use' ? 'row-uses' : undefined}
                          inputMode={c.key === 'remarks' || c.key === 'use' ? 'text' : undefined}
                          placeholder={c.key === 'day' ? (carried[i] ?? '') : ''}
                          maxLength={c.key === 'remarks' ? 2000 : 400}
                          value={r[c.key]}
                          onKeyDown={(e) => keys(e, i, k)}
                          onChange={(e) =>
                            setRows(typed.rows.map((x, n) => (n === i ? { ...x, [c.key]: e.target.value } : x)))
                          }
                        />
                      </td>
                    ))}
                  </tr>
                  <Told line={line} />
                </Fragment>
              );
            })}
          </tbody>
        </table>
      </section>
      <datalist id="row-uses">
        {sheet.uses.map((u) => (
          <option key={u} value={u.replaceAll('_', ' ')} />
        ))}
      </datalist>
      {read?.lines.some((l) => l.slips.length) ? (
        <p className="hint">A slip of the book may be kept: the total that the book declares stands.</p>
      ) : null}
      <div className="fields">
        <Select
          label="Known from"
          name="row-evidence"
          options={EVIDENCE}
          value={typed.evidence}
          set={(evidence) => change({ ...typed, evidence })}
        />
        <Select
          label="Days are written"
          name="row-days"
          options={DAY_ORDERS}
          value={typed.day_order}
          set={(day_order) => change({ ...typed, day_order })}
        />
        <Input
          label="Brought forward, as the page says"
          unit="h"
          name="row-brought"
          value={typed.brought_h}
          set={(brought_h) => change({ ...typed, brought_h })}
        />
        <Input
          label="Landings brought forward"
          name="row-brought-landings"
          value={typed.brought_landings}
          set={(brought_landings) => change({ ...typed, brought_landings })}
        />
        {read?.gaps.map((g) => (
          <Select
            key={g.entry}
            label={`Stretch without paper, entry ${g.entry}`}
            name={`close-${g.entry}`}
            options={CLOSING}
            hint={g.words}
            value={typed.close[g.entry] ?? ''}
            set={(how) => change({ ...typed, close: { ...typed.close, [g.entry]: how } })}
          />
        ))}
      </div>
      <ErrorNotice error={failed} />
      <div className="actions">
        <BusyButton
          type="button"
          className="first"
          disabled={empty}
          busy={writing.busy !== ''}
          onClick={() => void writing.show(entries)}
        >
          Show before and after
        </BusyButton>
        {empty ? null : (
          <button type="button" onClick={() => change(START)}>
            Clear the rows
          </button>
        )}
        {empty ? null : <KeptHere failed={kept.failed} />}
      </div>
      <BeforeAfter writing={writing} said={said} />
    </>
  );
}

/** Below a row: what it adds up to, and in words what does not fit. */
export function Told({ line }: { line: ShownLine | undefined }) {
  if (!line) return null;
  const sums = [line.sum && `${line.sum} h`, line.sumLandings && `${line.sumLandings} landings`].filter(Boolean);
  const words = [...(line.reason ? [line.reason] : []), ...line.slips, ...line.warnings];
  return (
    <tr className="told">
      <td />
      <td colSpan={COLUMNS.length}>
        <span className="soft">
          {[line.day, sums.length ? `adds up to ${sums.join(' and ')}` : ''].filter(Boolean).join(', ')}
        </span>
        {words.map((w) => (
          <strong className="slip" key={w}>
            {w}
          </strong>
        ))}
      </td>
    </tr>
  );
}

export function KeptHere({ failed }: { failed: boolean }) {
  return (
    <span className="hint">
      {failed
        ? 'This browser keeps nothing: write before you leave the page.'
        : 'Kept in this browser until it is written: a reload loses nothing.'}
    </span>
  );
}
