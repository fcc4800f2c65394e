import { ServerSaidNo } from '../../api/client.ts';
import type { Preview, ReadFile } from '../../api/import.ts';
import { storiesOf } from '../../parts/story.ts';
import { fleetSheet } from '../../testing/fleet.ts';
import { Given } from '../../testing/given.tsx';
import { CallQuestions } from './call-form.tsx';
import { DropZone } from './drop-zone.tsx';
import { MapAndPreview } from './map-and-preview.tsx';
import { MappingFields } from './mapping-fields.tsx';
import { PreviewView } from './preview-view.tsx';
import { Progress } from './progress.tsx';
import { TargetFields } from './target-fields.tsx';

const LONG = 'Bordbuchübertragungsbemerkung'.repeat(6);
const nothing = () => undefined;
const file: ReadFile = {
  importId: 'read-1',
  fileName: 'logbook of ZQ-LMB.csv',
  sheets: ['Sheet 1'],
  header: ['Date', 'Total', 'Ldg', 'Use', 'Remarks'],
  sample: [
    ['01/04/2010', '1204.3', '2004', 'tow', ''],
    ['02/04/2010', '1205.1', '2009', 'priv', 'annual, nothing found'],
  ],
  mapping: {
    sparwright: 'mapping/1',
    header_row: 0,
    columns: { day: 0, total_h: 1, landings_total: 2, use: 3 },
    day_order: 'to_be_chosen',
    decimal: 'point',
    uses: { tow: 'tow' },
  },
};
const wide: ReadFile = {
  ...file,
  fileName: LONG,
  header: Array.from({ length: 12 }, (_, i) => `${LONG} ${i}`),
  sample: Array.from({ length: 20 }, () => Array.from({ length: 12 }, () => LONG)),
};
const accepted = (row: number) => ({
  row,
  verdict: 'accepted' as const,
  cells: ['01/04/2010', '1204.3', '2004', 'tow', ''],
});
const refused = {
  row: 3,
  verdict: 'refused' as const,
  reason: '"31/02/2019" is not a day. Correct the date.',
  cells: ['31/02/2019', '1207.0', '2015', 'tow', ''],
};
const preview = (rows: Preview['rows'], more: Partial<Preview> = {}): Preview => ({
  rows,
  counts: {
    accepted: rows.filter((r) => r.verdict === 'accepted').length,
    refused: rows.filter((r) => r.verdict === 'refused').length,
  },
  ...more,
});
const Shown = ({ of, error = null }: { of: Preview; error?: unknown }) => (
  <PreviewView preview={of} header={file.header} writing={false} error={error} write={nothing} />
);
const cutOff = new ServerSaidNo(
  {
    code: 'server.not-found',
    given: 'the file "read-1"',
    allowed: 'a file that was read since the program started',
    remedy: 'Drop the file again; nothing was written',
  },
  404,
);
const fleet = [[['sheet', 'own', 'fleet', {}], fleetSheet(3)]] as const;
const NO_ASKING = 'It asks nothing; a refusal stands on the page as an error notice, which has its own stories.';
const SAME = 'Its words are always the same.';
export default [
  storiesOf('Import, what each column is', [
    { state: 'typical', shows: 'typical', Draw: () => <MappingFields file={file} /> },
    {
      state: 'empty',
      shows: 'empty',
      Draw: () => (
        <MappingFields file={{ ...file, header: [], sample: [], mapping: { ...file.mapping, columns: {} } }} />
      ),
    },
    {
      state: 'failing, a word of use that means nothing',
      shows: 'failing',
      Draw: () => <MappingFields file={{ ...file, mapping: { ...file.mapping, decimal: 'to_be_chosen', uses: {} } }} />,
    },
    { state: 'overflowing', shows: 'overflowing', Draw: () => <MappingFields file={wide} /> },
  ]),
  storiesOf('Import, what becomes of the rows', [
    {
      state: 'typical',
      shows: 'typical',
      Draw: () => (
        <Shown
          of={preview([accepted(1), { ...accepted(2), warning: 'It lies 4 years after the row before.' }], {
            totals: { 'Last total': '1 204.3 h' },
            notes: ['One row of the head was left out.'],
          })}
        />
      ),
    },
    { state: 'empty', shows: 'empty', Draw: () => <Shown of={preview([])} /> },
    {
      state: 'failing, rows refused and a question open',
      shows: 'failing',
      Draw: () => <Shown of={preview([accepted(1), refused], { open: ['Is it day first or month first?'] })} />,
    },
    {
      state: 'failing, not written',
      shows: 'failing',
      Draw: () => <Shown of={preview([accepted(1)])} error={cutOff} />,
    },
    {
      state: 'overflowing',
      shows: 'overflowing',
      Draw: () => (
        <Shown
          of={preview(
            Array.from({ length: 40 }, (_, i) =>
              i % 9 ? accepted(i) : { ...refused, row: i, reason: LONG, cells: [LONG] },
            ),
          )}
        />
      ),
    },
  ]),
  storiesOf(
    'Import, columns and rows',
    [
      {
        state: 'typical',
        shows: 'typical',
        Draw: () => (
          <Given answers={fleet}>
            <MapAndPreview shop="own" file={{ ...file, remembered: true }} />
          </Given>
        ),
      },
      {
        state: 'empty, no aircraft yet',
        shows: 'empty',
        Draw: () => (
          <Given>
            <MapAndPreview shop="own" file={file} />
          </Given>
        ),
      },
      {
        state: 'overflowing',
        shows: 'overflowing',
        Draw: () => (
          <Given answers={fleet}>
            <MapAndPreview shop="own" file={wide} />
          </Given>
        ),
      },
    ],
    { failing: 'What fails stands in the part below it, what becomes of the rows, which has its own stories.' },
  ),
  storiesOf(
    'Import, whose logbook',
    [
      {
        state: 'typical',
        shows: 'typical',
        Draw: () => (
          <TargetFields
            aircraft={[{ id: 'aircraft:1', registration: 'ZQ-LMB' }]}
            chosen="aircraft:1"
            choose={nothing}
          />
        ),
      },
      {
        state: 'empty, a new aircraft',
        shows: 'empty',
        Draw: () => <TargetFields aircraft={[]} chosen="" choose={nothing} />,
      },
      {
        state: 'overflowing',
        shows: 'overflowing',
        Draw: () => <TargetFields aircraft={[{ id: 'a', registration: LONG }]} chosen="a" choose={nothing} />,
      },
    ],
    { failing: NO_ASKING },
  ),
  storiesOf(
    'Import, the file',
    [
      { state: 'typical', shows: 'typical', Draw: () => <DropZone take={nothing} disabled={false} /> },
      { state: 'empty, not now', shows: 'empty', Draw: () => <DropZone take={nothing} disabled /> },
    ],
    { failing: NO_ASKING, overflowing: SAME },
  ),
  storiesOf(
    'Import, how far it is',
    [
      { state: 'typical', shows: 'typical', Draw: () => <Progress part={0.4} what="Sending the file" /> },
      { state: 'empty', shows: 'empty', Draw: () => <Progress part={0} what="Sending the file" /> },
      { state: 'overflowing', shows: 'overflowing', Draw: () => <Progress part={1} what={`Sending ${LONG}`} /> },
    ],
    { failing: NO_ASKING },
  ),
  storiesOf('Caller, the six questions', [{ state: 'empty', shows: 'empty', Draw: () => <CallQuestions /> }], {
    typical: 'It starts empty; what is typed stays with the browser.',
    failing: NO_ASKING,
    overflowing: 'Its lines are added one by one; the part Rows shows many of them.',
  }),
];
