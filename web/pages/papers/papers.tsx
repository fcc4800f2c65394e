import { useEffect, useState } from 'react';
import { Link, useLocation } from 'wouter';
import { type PaperPage, type PaperRow, type PapersSheet, usePapers } from '../../api/papers.ts';
import { Answer } from '../../parts/answer.tsx';
import { Warnings } from '../../parts/caution.tsx';
import { Loaded } from '../../parts/loading.tsx';
import { Page } from '../../parts/page.tsx';
import { TitleBlock } from '../../parts/title-block.tsx';
import { AsKnown, useKnown } from './as-known.tsx';
import { PaperFindings } from './paper-findings.tsx';
import { PaperList } from './paper-list.tsx';
import { RowsGrid } from './rows-grid.tsx';
import { type Book, BookFields, Scans } from './scans.tsx';
import { SingleEntry } from './single-entry.tsx';
import { useKept } from './use-kept.ts';

export default function PapersPage({ shop, id }: { shop: string; id: string }) {
  const asked = useKnown();
  const papers = usePapers(shop, id, asked);
  const [, go] = useLocation();
  const past = asked.known !== undefined || asked.known_on !== undefined;
  const name = papers.data?.subject ?? 'Aircraft';
  return (
    <Page shop={shop} title={`Papers of ${name}`} aircraft={{ id, name }}>
      <Loaded query={papers} what="Reading the papers">
        {(sheet) => (
          <>
            <TitleBlock block={sheet.titleBlock} number={sheet.number} />
            <Answer answer={sheet.answer} because={sheet.because} />
            <AsKnown key={asked.known_on ?? ''} />
            <Warnings warnings={sheet.warnings} />
            <Desk shop={shop} id={id} sheet={sheet} past={past} />
            <p>
              <Link href={`/${shop}/aircraft/${encodeURIComponent(id)}`}>To the answer for {name}</Link>
            </p>
          </>
        )}
      </Loaded>
      {papers.error && past ? (
        <div className="actions">
          <button type="button" onClick={() => go(`/${shop}/aircraft/${encodeURIComponent(id)}/papers`)}>
            Back to what is known now
          </button>
        </div>
      ) : null}
    </Page>
  );
}

const NO_BOOK: Book = { title: '', page: '', by: '' };
/** The scan on one side, what is typed on the other; below, every paper. */
function Desk({ shop, id, sheet, past }: { shop: string; id: string; sheet: PapersSheet; past: boolean }) {
  const book = useKept<Book>(`book ${shop} ${id}`, NO_BOOK);
  const [entry, setEntry] = useState<number | null>(null);
  const [fresh, setFresh] = useState<number | null>(null);
  const [loose, setLoose] = useState<PaperPage | null>(null);
  // An entry named in the address is opened for correction: "#entry-7".
  const [correcting, setCorrecting] = useState<number | null>(
    () => Number(/^#entry-(\d+)$/.exec(window.location.hash)?.[1] ?? 0) || null,
  );
  const [way, setWay] = useState<'rows' | 'one'>('rows');
  const shown =
    loose ??
    sheet.pages.find((p) => p.entry === entry) ??
    sheet.pages.find((p) => p.page === book.value.page && p.title === book.value.title) ??
    sheet.pages[0] ??
    null;
  const show = (page: PaperPage) => {
    setLoose(null);
    setEntry(page.entry);
    book.set({ ...book.value, title: page.title, page: page.page });
  };
  const keep = (number: number) => {
    setLoose(null);
    setEntry(number);
    setFresh(number);
  };
  useEffect(() => {
    const page = sheet.pages.find((p) => p.entry === fresh);
    if (!page) return;
    setFresh(null);
    book.set((b) => ({ ...b, title: page.title, page: page.page }));
  }, [sheet.pages, fresh, book.set]);
  const look = (r: PaperRow) => {
    const kept = sheet.pages.filter((p) => p.sha256 === r.sha256);
    const page = kept.find((p) => p.page === r.page) ?? kept[0];
    if (page) {
      setLoose(null);
      setEntry(page.entry);
    } else if (r.sha256) setLoose(photograph(r));
    document.getElementById('scans')?.scrollIntoView();
  };
  const correct = (n: number) => {
    setCorrecting(n);
    requestAnimationFrame(() => document.getElementById(`entry-${n}`)?.scrollIntoView());
  };
  const typing = { shop, aircraft: id, sheet, book: book.value, sha256: past ? null : (shown?.sha256 ?? null) };
  return (
    <>
      <div className="beside">
        <Scans
          shop={shop}
          aircraft={id}
          pages={sheet.pages}
          shown={shown}
          show={show}
          book={book.value}
          kept={keep}
          past={past}
        />
        {past ? null : (
          <section className="sheet typing" aria-labelledby="typing">
            <h2 id="typing">What it says</h2>
            <fieldset className="way">
              <legend className="hidden-text">How it is typed</legend>
              <label className="choice">
                <input type="radio" name="way" checked={way === 'rows'} onChange={() => setWay('rows')} />
                rows of the book
              </label>
              <label className="choice">
                <input type="radio" name="way" checked={way === 'one'} onChange={() => setWay('one')} />
                one entry of any kind
              </label>
            </fieldset>
            <BookFields book={book.value} set={book.set} />
            {way === 'rows' ? <RowsGrid {...typing} /> : <SingleEntry {...typing} />}
          </section>
        )}
      </div>
      <PaperFindings shop={shop} sheet={sheet} correct={past ? null : correct} />
      <PaperList
        shop={shop}
        aircraft={id}
        sheet={sheet}
        look={look}
        correcting={correcting}
        correct={setCorrecting}
        past={past}
      />
    </>
  );
}
/** A photograph that belongs to one entry and to no book. */
const photograph = (r: PaperRow): PaperPage => ({
  entry: r.number,
  sha256: r.sha256 ?? '',
  mediaType: r.kind === 'letter' ? 'application/pdf' : 'image/jpeg',
  title: `Entry ${r.number}`,
  page: '',
  inFile: 1,
  entries: 1,
});
