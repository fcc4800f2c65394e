import { useQueryClient } from '@tanstack/react-query';
import { useRef, useState } from 'react';
import { keepScan, LARGEST_BYTES, type PaperPage } from '../../api/papers.ts';
import { ErrorNotice } from '../../parts/error-notice.tsx';
import { Input } from '../../parts/field.tsx';
import { pagesIn } from './pdf.ts';
import { ScanPage } from './scan-page.tsx';
import { useWaiting } from './use-waiting.ts';
import { WaitingPages } from './waiting-pages.tsx';

export interface Book {
  readonly title: string;
  readonly page: string;
  readonly by: string;
}
interface Props {
  readonly shop: string;
  readonly aircraft: string;
  readonly pages: readonly PaperPage[];
  readonly shown: PaperPage | null;
  readonly show: (page: PaperPage) => void;
  readonly book: Book;
  /** The first of the pages that were just kept. */
  readonly kept: (entry: number) => void;
  /** A past day is looked at: nothing is kept from here. */
  readonly past: boolean;
}

/** One side of the desk: the pages of the book, and the one that is open. */
export function Scans({ shop, aircraft, pages, shown, show, book, kept, past }: Props) {
  const at = shown ? pages.findIndex((p) => p.entry === shown.entry) : -1;
  const step = (by: number) => {
    const next = pages[at + by];
    if (next) show(next);
  };
  return (
    <section className="sheet scans" aria-labelledby="scans">
      <h2 id="scans">The page</h2>
      {shown ? (
        <>
          <div className="row">
            <button type="button" disabled={at <= 0} onClick={() => step(-1)}>
              Page before
            </button>
            <label className="field">
              <span className="label">Page kept</span>
              <select
                value={String(shown.entry)}
                onChange={(e) => {
                  const page = pages.find((p) => String(p.entry) === e.target.value);
                  if (page) show(page);
                }}
              >
                {pages.map((p) => (
                  <option key={p.entry} value={p.entry}>
                    {p.title}, page {p.page}
                    {p.entries ? ` (${p.entries} read)` : ''}
                  </option>
                ))}
              </select>
            </label>
            <button type="button" disabled={at < 0 || at >= pages.length - 1} onClick={() => step(1)}>
              Page after
            </button>
          </div>
          <ScanPage key={shown.entry} shop={shop} page={shown} />
        </>
      ) : (
        <p className="empty">
          No page is kept for this aircraft yet. Drop photographs or a PDF of the book here; entries can be typed
          without it too.
        </p>
      )}
      {past ? null : <KeepPages shop={shop} aircraft={aircraft} pages={pages} book={book} kept={kept} />}
    </section>
  );
}

/** The page that follows the last one kept of this book. */
const nextOf = (pages: readonly PaperPage[], title: string): string => {
  const last = pages.filter((p) => p.title === title).at(-1)?.page ?? '';
  return /^\d+$/.test(last) ? String(Number(last) + 1) : '';
};

function KeepPages({
  shop,
  aircraft,
  pages,
  book,
  kept: open,
}: Pick<Props, 'shop' | 'aircraft' | 'pages' | 'book' | 'kept'>) {
  const [label, setLabel] = useState<string | null>(null);
  const first = label ?? (nextOf(pages, book.title.trim()) || book.page);
  const [over, setOver] = useState(false);
  const [said, setSaid] = useState('');
  const [failed, setFailed] = useState<unknown>(null);
  const [busy, setBusy] = useState(false);
  const input = useRef<HTMLInputElement>(null);
  const queries = useQueryClient();
  const named = book.title.trim() !== '' && book.by.trim() !== '';
  const waiting = useWaiting(named, (files) => void take(files));
  const take = async (files: readonly File[]) => {
    setFailed(null);
    if (!named) return waiting.wait(files);
    setBusy(true);
    let [kept, there] = [0, 0];
    let opened: number | undefined;
    try {
      let page = first.trim();
      for (const file of files) {
        setSaid(`Keeping ${file.name} ...`);
        if (file.size > LARGEST_BYTES)
          throw new Error(
            `"${file.name}" is larger than 20 MB. Photograph it at a lower resolution, or split the PDF; what was kept before it stays.`,
          );
        const pdf = file.type === 'application/pdf' || /\.pdf$/i.test(file.name);
        const count = pdf ? await pagesIn(file) : 1;
        const answer = await keepScan(shop, file, { aircraft, title: book.title, by: book.by, page, pages: count });
        if (answer.already) there += 1;
        else kept += answer.numbers.length;
        opened ??= answer.numbers[0];
        if (/^\d+$/.test(page) && !answer.already) page = String(Number(page) + count);
        else if (page !== '' && !answer.already) page = '';
      }
      setLabel(page === '' ? null : page);
    } catch (e) {
      setFailed(e);
    }
    const words = [
      kept ? `${kept} ${kept === 1 ? 'page is' : 'pages are'} kept.` : '',
      there ? `${there} ${there === 1 ? 'file was' : 'files were'} here already; nothing was kept twice.` : '',
    ];
    setSaid(words.filter(Boolean).join(' '));
    setBusy(false);
    await queries.invalidateQueries({ queryKey: ['papers'] });
    if (opened !== undefined) open(opened);
  };
  return (
    <div className="keep no-print">
      <section
        className={over ? 'drop over' : 'drop'}
        aria-label="Pages of the book"
        onDragOver={(e) => {
          e.preventDefault();
          setOver(true);
        }}
        onDragLeave={() => setOver(false)}
        onDrop={(e) => {
          e.preventDefault();
          setOver(false);
          if (!busy) void take([...e.dataTransfer.files]);
        }}
      >
        <p>Drop photographs (JPEG, PNG, WebP) or a PDF of the book here.</p>
        <input
          ref={input}
          type="file"
          multiple
          className="hidden-text"
          tabIndex={-1}
          aria-label="Pages of the book"
          accept="image/jpeg,image/png,image/webp,application/pdf"
          onChange={(e) => {
            const files = [...(e.target.files ?? [])];
            e.target.value = '';
            if (files.length) void take(files);
          }}
        />
        <button type="button" disabled={busy} onClick={() => input.current?.click()}>
          Choose pages
        </button>
        <label className="choice">
          as page&ensp;
          <input className="short" maxLength={40} value={first} onChange={(e) => setLabel(e.target.value)} />
        </label>
        <p className="hint">The next ones go on from there. Each file at most 20 MB; the same page is kept once.</p>
      </section>
      <p role="status">{said}</p>
      <WaitingPages names={waiting.files.map((f) => f.name)} named={named} go={waiting.go} forget={waiting.forget} />
      <ErrorNotice error={failed} />
    </div>
  );
}

/** Which book is read, which page, and who saw it: kept with every page and every entry. */
export function BookFields({ book, set }: { book: Book; set: (book: Book) => void }) {
  return (
    <div className="fields">
      <Input label="Book or paper" name="book" value={book.title} set={(title) => set({ ...book, title })} />
      <Input label="Page" name="book-page" maxLength={40} value={book.page} set={(page) => set({ ...book, page })} />
      <Input label="Seen by" name="book-by" value={book.by} set={(by) => set({ ...book, by })} />
    </div>
  );
}
