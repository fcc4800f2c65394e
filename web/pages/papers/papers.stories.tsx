import type { PaperRow, PapersSheet } from '../../api/papers.ts';
import { storiesOf } from '../../parts/story.ts';
import { Given } from '../../testing/given.tsx';
import { aircraftSheet } from '../../testing/sheets.ts';
import { standings } from '../../testing/tables.ts';
import { AsKnown } from './as-known.tsx';
import { BeforeAfter, CameFirst } from './before-after.tsx';
import { Correct } from './correct.tsx';
import { PaperFindings } from './paper-findings.tsx';
import { PaperList } from './paper-list.tsx';
import { RowsGrid, Told } from './rows-grid.tsx';
import { BookFields, Scans } from './scans.tsx';
import { SingleEntry } from './single-entry.tsx';
import type { Writing } from './use-writing.ts';

const row = (number: number, more: Partial<PaperRow> = {}): PaperRow => ({
  number,
  subject: 'aircraft:1',
  about: 'ZQ-AAA',
  day: '2010-04-01' as PaperRow['day'],
  dayWords: '1 Apr 2010',
  kind: 'reading',
  kindWords: 'reading',
  says: 'Total 1204.3 h, 2004 landings',
  paper: 'Logbook ZQ-AAA, volume 2',
  page: '41',
  row: '3',
  sha256: 'a'.repeat(64),
  seen: 'M. Orne, 25 Nov 2026',
  evidence: 'copy',
  evidenceWords: 'from a copy',
  recorded: '25 Nov 2026, the desk',
  replaces: null,
  replacedBy: null,
  correctable: true,
  entry: { order: 0, body: { total_h: 1204.3, landings: 2004 }, paper: null, note: null },
  ...more,
});
const corrected = row(7, {
  replacedBy: {
    number: 12,
    words: 'Entry 12 by M. Orne on 26 Nov 2026 stands in its place: 1 Apr 2010, reading: Total 1203.3 h',
  },
  correctable: false,
});
const sheet = (rows: readonly PaperRow[], more: Partial<PapersSheet> = {}): PapersSheet =>
  ({
    rows,
    pages: [],
    findings: [],
    subjects: [{ id: 'aircraft:1', name: 'ZQ-AAA' }],
    kinds: [{ kind: 'reading', words: 'reading' }],
    gaps: [],
    uses: ['private', 'tow'],
    last: 12,
    ...more,
  }) as unknown as PapersSheet;
const LONG = 'Abschriftsnachweisbuchersatzblattsammlungsverzeichnis'.repeat(4);
const many = Array.from({ length: 40 }, (_, i) => row(i + 1, { says: i % 7 ? 'Total 1204.3 h' : LONG, paper: LONG }));
const nothing = () => undefined;
const List = ({ rows, past = false }: { rows: readonly PaperRow[]; past?: boolean }) => (
  <Given>
    <PaperList
      shop="demo"
      aircraft="aircraft:1"
      sheet={sheet(rows)}
      look={nothing}
      correcting={null}
      correct={nothing}
      past={past}
    />
  </Given>
);
const finding = {
  code: 'record.total-runs-backwards',
  text: 'The total of 1 Apr 2010 lies below the one of 1 Mar 2010.',
  remedy: 'Look at both rows of the book, and correct the one that was misread',
  rows: [7, 12],
  elsewhere: [{ text: 'Entry 31, of ZQ-BBB', aircraft: 'aircraft:2' }],
};
const line = { row: 1, day: '1 Apr 2010', sum: '1 203.3', sumLandings: '2 004', slips: [], reason: '', warnings: [] };
const Line = ({ more }: { more: object }) => (
  <table className="typed-rows">
    <tbody>
      <Told line={{ ...line, ...more }} />
    </tbody>
  </table>
);
const book = { title: 'Logbook ZQ-AAA, volume 2', page: '41', by: 'M. Orne' };

const grid = (name: string, book_: typeof book, sha256: string | null = null) => (
  <Given>
    <RowsGrid shop="demo" aircraft={`aircraft:${name}`} sheet={sheet([])} book={book_} sha256={sha256} />
  </Given>
);
const single = (subjects: PapersSheet['subjects'], title: string) => (
  <Given>
    <SingleEntry
      shop="demo"
      aircraft="aircraft:story"
      sheet={sheet([], { subjects })}
      book={{ ...book, title }}
      sha256={null}
    />
  </Given>
);
const correct = (r: PaperRow, rows = [r]) => (
  <Given>
    <Correct shop="demo" aircraft="aircraft:1" sheet={sheet(rows)} row={r} close={nothing} />
  </Given>
);
const scans = (past: boolean) => (
  <Given>
    <Scans
      shop="demo"
      aircraft="aircraft:1"
      pages={[]}
      shown={null}
      show={nothing}
      book={book}
      kept={nothing}
      past={past}
    />
  </Given>
);
const found = (findings: readonly object[]) => (
  <PaperFindings shop="demo" sheet={sheet([row(12), row(7)], { findings } as object)} correct={nothing} />
);
const writing = (more: Partial<Writing>): Writing =>
  ({ preview: null, failed: null, meanwhile: null, busy: '', reset: nothing, ...more }) as Writing;
const AT_SERVER = 'A refusal stands in it as an error notice, which has its own stories.';

export default [
  storiesOf(
    'Papers, the list',
    [
      { state: 'typical', shows: 'typical', Draw: () => <List rows={[row(12, { replaces: 7 }), corrected]} /> },
      { state: 'typical, of a past day', shows: 'typical', Draw: () => <List rows={[row(12)]} past /> },
      { state: 'empty', shows: 'empty', Draw: () => <List rows={[]} /> },
      { state: 'overflowing', shows: 'overflowing', Draw: () => <List rows={many} /> },
    ],
    { failing: 'What the papers contradict stands in the part Papers, what they contradict.' },
  ),
  storiesOf(
    'Papers, what they contradict',
    [
      { state: 'typical', shows: 'typical', Draw: () => found([finding]) },
      { state: 'empty', shows: 'empty', Draw: () => <PaperFindings shop="demo" sheet={sheet([])} correct={nothing} /> },
      { state: 'overflowing', shows: 'overflowing', Draw: () => found([{ ...finding, text: LONG, remedy: LONG }]) },
    ],
    { failing: 'What it lists is what failed.' },
  ),
  storiesOf(
    'Papers, rows of the book',
    [
      { state: 'typical', shows: 'typical', Draw: () => grid('typical', book, 'a'.repeat(64)) },
      { state: 'empty, no book named', shows: 'empty', Draw: () => grid('empty', { title: '', page: '', by: '' }) },
      { state: 'overflowing', shows: 'overflowing', Draw: () => grid('long', { title: LONG, page: LONG, by: LONG }) },
    ],
    { failing: 'A row that fails has its own stories.' },
  ),
  storiesOf('Papers, what a row says', [
    { state: 'typical, it adds up', shows: 'typical', Draw: () => <Line more={{}} /> },
    { state: 'empty, not read yet', shows: 'empty', Draw: () => <Told line={undefined} /> },
    {
      state: 'failing, a slip of the book',
      shows: 'failing',
      Draw: () => <Line more={{ slips: ['the book says 1 204.3, the rows add up to 1 203.3: 1.0 h less'] }} />,
    },
    {
      state: 'overflowing, it cannot be read',
      shows: 'overflowing',
      Draw: () => <Line more={{ reason: `flown: "${LONG}" is no number` }} />,
    },
  ]),
  storiesOf(
    'Papers, one entry',
    [
      {
        state: 'typical',
        shows: 'typical',
        Draw: () =>
          single(
            [
              { id: 'aircraft:1', name: 'ZQ-AAA' },
              { id: 'spar:L', name: 'Left inboard spar' },
            ],
            book.title,
          ),
      },
      { state: 'empty', shows: 'empty', Draw: () => single([], '') },
      { state: 'overflowing', shows: 'overflowing', Draw: () => single([{ id: 'a', name: LONG }], LONG) },
    ],
    { failing: AT_SERVER },
  ),
  storiesOf(
    'Papers, a correction',
    [
      { state: 'typical', shows: 'typical', Draw: () => correct(row(21)) },
      {
        state: 'failing, corrected in the meantime',
        shows: 'failing',
        Draw: () => correct(corrected, [corrected, row(12, { replaces: 7 })]),
      },
      {
        state: 'overflowing',
        shows: 'overflowing',
        Draw: () =>
          correct(
            row(22, {
              paper: LONG,
              entry: { order: 0, body: { total_h: 1204.3, what: LONG }, paper: null, note: LONG },
            }),
          ),
      },
    ],
    { empty: 'It is filled with what is recorded.' },
  ),
  storiesOf('Papers, before and after', [
    {
      state: 'typical',
      shows: 'typical',
      Draw: () => (
        <BeforeAfter
          said=""
          writing={writing({ preview: { sheet: { ...aircraftSheet, blocks: [standings] }, entries: [{} as never] } })}
        />
      ),
    },
    {
      state: 'typical, written',
      shows: 'typical',
      Draw: () => <BeforeAfter said="Written: entry 14." writing={writing({})} />,
    },
    { state: 'empty', shows: 'empty', Draw: () => <BeforeAfter said="" writing={writing({})} /> },
    {
      state: 'failing, another tab wrote first',
      shows: 'failing',
      Draw: () => <CameFirst meanwhile={{ sheet: sheet([row(12, { replaces: 7 })]), numbers: [12] }} />,
    },
    {
      state: 'overflowing',
      shows: 'overflowing',
      Draw: () => (
        <CameFirst meanwhile={{ sheet: sheet(many.slice(0, 20)), numbers: many.slice(0, 20).map((r) => r.number) }} />
      ),
    },
  ]),
  storiesOf(
    'Papers, the page',
    [
      { state: 'empty', shows: 'empty', Draw: () => scans(false) },
      { state: 'empty, of a past day', shows: 'empty', Draw: () => scans(true) },
    ],
    {
      typical: 'A page is a file of the server; the browser test of the papers page shows one.',
      failing: 'A file that is refused is shown by the browser test of the papers page.',
      overflowing: 'A page of many is shown by the browser test of the papers page.',
    },
  ),
  storiesOf(
    'Papers, which book',
    [
      { state: 'typical', shows: 'typical', Draw: () => <BookFields book={book} set={nothing} /> },
      {
        state: 'empty',
        shows: 'empty',
        Draw: () => <BookFields book={{ title: '', page: '', by: '' }} set={nothing} />,
      },
      {
        state: 'overflowing',
        shows: 'overflowing',
        Draw: () => <BookFields book={{ title: LONG, page: '9'.repeat(40), by: LONG }} set={nothing} />,
      },
    ],
    { failing: 'It asks nothing of the server.' },
  ),
  storiesOf('As known on', [{ state: 'empty', shows: 'empty', Draw: () => <AsKnown /> }], {
    typical: 'Its day stands in the address of the page.',
    failing: 'It asks nothing of the server.',
    overflowing: 'It holds one day.',
  }),
];
