import { longNames, many, noRows, standings } from '../testing/tables.ts';
import { storiesOf } from './story.ts';
import { Table } from './table.tsx';

const notComputed = {
  ...standings,
  rows: standings.rows.slice(0, 1).map((r) => ({
    ...r,
    cells: {
      part: r.cells.part!,
      standing: {
        is: 'standing',
        worst: 'due',
        best: 'due',
        act: true,
        text: 'treat as due, not computed',
        small: 'a test case of the directive fails',
      } as const,
    },
  })),
};
export default storiesOf('Table', [
  { state: 'typical', shows: 'typical', Draw: () => <Table block={standings} /> },
  {
    state: 'typical, rows in folds',
    shows: 'typical',
    Draw: () => (
      <Table
        block={{
          ...many,
          columns: many.columns.slice(0, 3),
          rows: many.rows.slice(0, 6),
          folds: [
            { title: 'Preparing', note: '2 steps, all done', count: 2, open: false },
            { title: 'Taking down', note: '3 steps; next: defuel', count: 3, open: true },
            { title: 'Dry pass', note: '1 step', count: 1, open: false },
          ],
        }}
      />
    ),
  },
  { state: 'empty', shows: 'empty', Draw: () => <Table block={noRows} /> },
  { state: 'failing', shows: 'failing', Draw: () => <Table block={notComputed} /> },
  { state: 'long names', shows: 'overflowing', Draw: () => <Table block={longNames} /> },
  {
    state: 'overflowing',
    shows: 'overflowing',
    Draw: () => <Table block={{ ...many, columns: many.columns.slice(0, 3) }} />,
  },
]);
