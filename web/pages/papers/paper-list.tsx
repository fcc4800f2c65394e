import { Fragment, useMemo, useState } from 'react';
import type { PaperRow, PapersSheet } from '../../api/papers.ts';
import { Input, Select } from '../../parts/field.tsx';
import { Correct } from './correct.tsx';

interface Props {
  readonly shop: string;
  readonly aircraft: string;
  readonly sheet: PapersSheet;
  /** Shows the page of the scan that a row was read from. */
  readonly look: (row: PaperRow) => void;
  readonly correcting: number | null;
  readonly correct: (number: number | null) => void;
  readonly past: boolean;
}
const SHOWN = 100;
const WHICH = [
  { value: '', text: 'all entries' },
  { value: 'standing', text: 'those that stand' },
  { value: 'corrected', text: 'corrected ones' },
  { value: 'scan', text: 'with a page kept' },
  { value: 'no-paper', text: 'without a paper' },
];
const matches = (r: PaperRow, words: readonly string[]): boolean => {
  const text =
    `${r.number} ${r.dayWords} ${r.day} ${r.kindWords} ${r.about} ${r.says} ${r.paper} ${r.page} ${r.seen} ${r.evidenceWords} ${r.recorded}`.toLowerCase();
  return words.every((w) => text.includes(w));
};
const isOf = (r: PaperRow, which: string): boolean => {
  if (which === 'standing') return r.replacedBy === null;
  if (which === 'corrected') return r.replacedBy !== null;
  if (which === 'scan') return r.sha256 !== null;
  if (which === 'no-paper') return r.paper === '';
  return true;
};

/** Every entry of the aircraft and of what ever sat in it, the newest first. */
export function PaperList({ shop, aircraft, sheet, look, correcting, correct, past }: Props) {
  const [search, setSearch] = useState('');
  const [kind, setKind] = useState('');
  const [about, setAbout] = useState('');
  const [which, setWhich] = useState('');
  const [all, setAll] = useState(false);
  const found = useMemo(() => {
    const words = search.toLowerCase().split(/\s+/).filter(Boolean);
    return sheet.rows.filter(
      (r) =>
        (kind === '' || r.kind === kind) &&
        (about === '' || r.subject === about) &&
        isOf(r, which) &&
        matches(r, words),
    );
  }, [sheet, search, kind, about, which]);
  const shown = all ? found : found.slice(0, SHOWN);
  // A row that is being corrected stays in sight, whatever is searched for.
  const opened = shown.some((r) => r.number === correcting) ? [] : sheet.rows.filter((r) => r.number === correcting);
  const rows = [...opened, ...shown];
  const kinds = new Map(sheet.rows.map((r) => [r.kind, r.kindWords]));
  return (
    <section className="sheet" aria-labelledby="papers">
      <h2 id="papers">Papers</h2>
      <div className="fields no-print">
        <Input label="Search" name="search" value={search} set={setSearch} hint="Words, a day, an entry number" />
        <Select
          label="What it says"
          name="which-kind"
          value={kind}
          set={setKind}
          options={[{ value: '', text: 'anything' }, ...[...kinds].map(([value, text]) => ({ value, text }))]}
        />
        <Select
          label="About"
          name="which-about"
          value={about}
          set={setAbout}
          options={[
            { value: '', text: 'the aircraft and its parts' },
            ...sheet.subjects.map((s) => ({ value: s.id, text: s.name })),
          ]}
        />
        <Select label="Which" name="which" value={which} set={setWhich} options={WHICH} />
      </div>
      <p className="hint" role="status">
        {found.length === sheet.rows.length
          ? `${found.length} entries`
          : `${found.length} of ${sheet.rows.length} entries`}
      </p>
      {found.length === 0 ? (
        <p className="empty">No entry is of this kind. Change the words or the choice above.</p>
      ) : (
        // biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable by keyboard
        <section className="scrolls" aria-label="Entries" tabIndex={0}>
          <table className="papers">
            <thead>
              <tr>
                <th scope="col" className="n">
                  Entry
                </th>
                <th scope="col">Day</th>
                <th scope="col">What it says</th>
                <th scope="col">Paper, page, row</th>
                <th scope="col">Known</th>
                <th scope="col">Recorded</th>
                <th scope="col">
                  <span className="hidden-text">To do</span>
                </th>
              </tr>
            </thead>
            <tbody>
              {rows.map((r) => (
                <Fragment key={r.number}>
                  <Line row={r} look={look} correct={past ? null : correct} open={correcting === r.number} />
                  {correcting === r.number && !past ? (
                    <tr className="opened">
                      <td colSpan={7}>
                        <Correct shop={shop} aircraft={aircraft} sheet={sheet} row={r} close={() => correct(null)} />
                      </td>
                    </tr>
                  ) : null}
                </Fragment>
              ))}
            </tbody>
          </table>
        </section>
      )}
      {shown.length < found.length ? (
        <button type="button" onClick={() => setAll(true)}>
          Show all {found.length} entries
        </button>
      ) : null}
    </section>
  );
}

function Line({
  row: r,
  look,
  correct,
  open,
}: {
  row: PaperRow;
  look: (row: PaperRow) => void;
  correct: ((number: number | null) => void) | null;
  open: boolean;
}) {
  const Said = r.replacedBy ? 's' : 'span';
  return (
    <tr id={`entry-${r.number}`}>
      <td className="n">{r.number}</td>
      <td>{r.dayWords}</td>
      <td>
        <Said>
          <b>{r.kindWords}</b>, {r.about}: {r.says}
        </Said>
        {r.replacedBy ? <small>{r.replacedBy.words}</small> : null}
        {r.replaces ? <small>Stands in place of entry {r.replaces}</small> : null}
      </td>
      <td>
        {r.paper || <span className="soft">no paper named</span>}
        {r.page || r.row ? (
          <small>{[r.page && `page ${r.page}`, r.row && `row ${r.row}`].filter(Boolean).join(', ')}</small>
        ) : null}
      </td>
      <td>
        {r.evidenceWords}
        {r.seen ? <small>seen by {r.seen}</small> : null}
      </td>
      <td>{r.recorded}</td>
      <td className="no-print">
        {r.sha256 ? (
          <button type="button" className="why" onClick={() => look(r)}>
            page<span className="hidden-text"> of entry {r.number}</span>
          </button>
        ) : null}
        {r.correctable && correct ? (
          <button type="button" className="why" aria-expanded={open} onClick={() => correct(open ? null : r.number)}>
            correct<span className="hidden-text"> entry {r.number}</span>
          </button>
        ) : null}
      </td>
    </tr>
  );
}
