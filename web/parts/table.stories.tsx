import { longNames, many, noRows, standings } from '../testing/tables.ts';
import type { Stories } from './story.ts';
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
const stories: Stories = {
  part: 'Table',
  stories: [
    { state: 'typical', Draw: () => <Table block={standings} /> },
    { state: 'empty', Draw: () => <Table block={noRows} /> },
    { state: 'failing', Draw: () => <Table block={notComputed} /> },
    { state: 'long names', Draw: () => <Table block={longNames} /> },
    { state: 'overflowing', Draw: () => <Table block={many} /> },
  ],
};
export default stories;
