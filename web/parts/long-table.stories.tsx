import type { TableBlock } from '../../sheets/model.ts';
import { longNames, many, noRows, standings } from '../testing/tables.ts';
import { LongTable } from './long-table.tsx';
import { storiesOf } from './story.ts';

const nothing = () => undefined;
const Drawn = ({ block, name }: { block: TableBlock; name: string }) => (
  <LongTable
    name="story"
    block={block}
    rows={block.rows}
    sorting={{ column: 'part', direction: 'ascending' }}
    sort={nothing}
    remember={`story ${name}`}
    question={name}
  />
);
export default storiesOf(
  'Long table',
  [
    { state: 'typical', shows: 'typical', Draw: () => <Drawn name="typical" block={standings} /> },
    { state: 'empty', shows: 'empty', Draw: () => <Drawn name="empty" block={noRows} /> },
    { state: 'overflowing, long names', shows: 'overflowing', Draw: () => <Drawn name="names" block={longNames} /> },
    { state: 'overflowing, many rows', shows: 'overflowing', Draw: () => <Drawn name="many" block={many} /> },
  ],
  { failing: 'It draws rows that are there; the page around it says what failed.' },
);
