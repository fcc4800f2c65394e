import { InForm, wrong } from '../../testing/in-form.tsx';
import { storiesOf } from '../story.ts';
import { FigureOf } from './figure-of.tsx';
import { PasteTable } from './paste-table.tsx';
import { SourceIn } from './source-in.tsx';
import { TableOf } from './table-of.tsx';
import { UnitsChooser } from './units-chooser.tsx';

const LONG = 'Report of the fatigue evaluation of the lower spar cap and of everything that is fastened to it'.repeat(
  2,
);
const figure =
  (document: object, problems: ReturnType<typeof wrong>[] = []) =>
  () => (
    <InForm document={document} problems={problems}>
      <FigureOf path={['width_mm']} label="Width of the plate" hint="Whole width" />
    </InForm>
  );
const source =
  (from: object, problems: ReturnType<typeof wrong>[] = []) =>
  () => (
    <InForm document={{ from }} problems={problems}>
      <SourceIn path={['from']} of="the stress" />
    </InForm>
  );
const FORMS = [{ names: ['level', 'times'], say: 'Two columns: the level, and how often it is passed.' }];
const rows =
  (count: number, problems: ReturnType<typeof wrong>[] = []) =>
  () => (
    <InForm
      document={{ up: Array.from({ length: count }, (_, i) => ({ at: i + 1, times: i === 1 ? 'many' : 1000 - i })) }}
      problems={problems}
    >
      <TableOf
        path={['up']}
        title="Upward"
        columns={[
          { field: 'at', title: 'Level' },
          { field: 'times', title: 'Times' },
        ]}
      />
    </InForm>
  );

export default [
  storiesOf('Form, a figure with its unit', [
    { state: 'typical', shows: 'typical', Draw: figure({ width_mm: 64 }) },
    { state: 'typical, written in inch', shows: 'typical', Draw: figure({ width_in: 2.5 }) },
    { state: 'empty', shows: 'empty', Draw: figure({}) },
    {
      state: 'failing',
      shows: 'failing',
      Draw: figure({ width_mm: '6,4' }, [wrong('width_mm', '"6,4". Write 6.4: a number with a decimal point.')]),
    },
    { state: 'overflowing', shows: 'overflowing', Draw: figure({ width_mm: 123456789.123456 }) },
  ]),
  storiesOf('Form, a source', [
    {
      state: 'typical',
      shows: 'typical',
      Draw: source({ source: 'Stress report of the type', edition: '3', place: 'table 4', known: 'read' }),
    },
    { state: 'empty', shows: 'empty', Draw: source({ source: '', known: 'read' }) },
    {
      state: 'failing',
      shows: 'failing',
      Draw: source({ source: '', known: 'read' }, [wrong('from.source', 'Fill it in.')]),
    },
    { state: 'overflowing', shows: 'overflowing', Draw: source({ source: LONG, place: LONG, known: 'second-hand' }) },
  ]),
  storiesOf(
    'Form, a pasted table',
    [
      {
        state: 'typical',
        shows: 'typical',
        Draw: () => <PasteTable label="Paste its table" forms={FORMS} take={() => undefined} />,
      },
      {
        state: 'typical, a decimal comma',
        shows: 'typical',
        Draw: () => (
          <PasteTable label="Paste its table" forms={FORMS} take={() => undefined} begin={'0,1;120\n0,2;17,5'} />
        ),
      },
      {
        state: 'failing, a cell is no figure',
        shows: 'failing',
        Draw: () => (
          <PasteTable label="Paste its table" forms={FORMS} take={() => undefined} begin={'0.1\t120\n0.2\tmany'} />
        ),
      },
      {
        state: 'failing, it is asked what the comma is',
        shows: 'failing',
        Draw: () => (
          <PasteTable
            label="Paste its table"
            forms={FORMS}
            take={() => undefined}
            begin={'1,200\t3,500\n2,400\t1,250'}
          />
        ),
      },
      {
        state: 'overflowing',
        shows: 'overflowing',
        Draw: () => (
          <PasteTable
            label="Paste its table"
            forms={FORMS}
            take={() => undefined}
            begin={`${LONG}\t${LONG}\n0.1\t123456789.123456\n0.2\t${LONG}`}
          />
        ),
      },
    ],
    { empty: 'It begins empty; its typical state is that.' },
  ),
  storiesOf('Form, rows of figures', [
    { state: 'typical', shows: 'typical', Draw: rows(1) },
    { state: 'empty', shows: 'empty', Draw: rows(0) },
    { state: 'failing', shows: 'failing', Draw: rows(3, [wrong('up.1.times', '"many". Correct it: a number.')]) },
    { state: 'overflowing', shows: 'overflowing', Draw: rows(200) },
  ]),
  storiesOf('Form, the units', [{ state: 'typical', shows: 'typical', Draw: () => <UnitsChooser /> }], {
    empty: 'One of the two is always chosen.',
    failing: 'It asks nothing of the server.',
    overflowing: 'Its words are always the same.',
  }),
];
