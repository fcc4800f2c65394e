import { QueryClient, QueryClientProvider } from '@tanstack/react-query';
import type { ReactNode } from 'react';
import type { PaperRow, PapersSheet } from '../../api/papers.ts';
import type { Stories } from '../../parts/story.ts';
import { AsKnown } from './as-known.tsx';
import { CameFirst } from './before-after.tsx';
import { PaperFindings } from './paper-findings.tsx';
import { PaperList } from './paper-list.tsx';
import { RowsGrid, Told } from './rows-grid.tsx';
import { Scans } from './scans.tsx';

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
const many = Array.from({ length: 140 }, (_, i) => row(i + 1, { says: i % 7 ? 'Total 1204.3 h' : LONG, paper: LONG }));
const nothing = () => undefined;
const queries = new QueryClient();
const With = ({ children }: { children: ReactNode }) => (
  <QueryClientProvider client={queries}>{children}</QueryClientProvider>
);
const List = ({ rows, past = false }: { rows: readonly PaperRow[]; past?: boolean }) => (
  <With>
    <PaperList
      shop="demo"
      aircraft="aircraft:1"
      sheet={sheet(rows)}
      look={nothing}
      correcting={null}
      correct={nothing}
      past={past}
    />
  </With>
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

const stories: Stories = {
  part: 'Papers: list, findings, typed rows, the page',
  stories: [
    { state: 'list, typical, one entry corrected', Draw: () => <List rows={[row(12, { replaces: 7 }), corrected]} /> },
    { state: 'list, empty', Draw: () => <List rows={[]} /> },
    { state: 'list, of a past day', Draw: () => <List rows={[row(12)]} past /> },
    { state: 'list, overflowing', Draw: () => <List rows={many} /> },
    {
      state: 'findings, both rows named',
      Draw: () => (
        <PaperFindings shop="demo" sheet={sheet([row(12), row(7)], { findings: [finding] })} correct={nothing} />
      ),
    },
    { state: 'findings, empty', Draw: () => <PaperFindings shop="demo" sheet={sheet([])} correct={nothing} /> },
    {
      state: 'rows, empty',
      Draw: () => (
        <With>
          <RowsGrid shop="demo" aircraft="aircraft:story" sheet={sheet([])} book={book} sha256={null} />
        </With>
      ),
    },
    { state: 'a row that adds up', Draw: () => <Line more={{}} /> },
    {
      state: 'a row with a slip of the book',
      Draw: () => <Line more={{ slips: ['the book says 1 204.3, the rows add up to 1 203.3: 1.0 h less'] }} />,
    },
    { state: 'a row that cannot be read', Draw: () => <Line more={{ reason: `flown: "${LONG}" is no number` }} /> },
    {
      state: 'the page, none kept',
      Draw: () => (
        <With>
          <Scans
            shop="demo"
            aircraft="aircraft:1"
            pages={[]}
            shown={null}
            show={nothing}
            book={book}
            kept={nothing}
            past={false}
          />
        </With>
      ),
    },
    {
      state: 'another tab wrote first',
      Draw: () => <CameFirst meanwhile={{ sheet: sheet([row(12, { replaces: 7 })]), numbers: [12] }} />,
    },
    { state: 'as known on', Draw: () => <AsKnown /> },
  ],
};
export default stories;
