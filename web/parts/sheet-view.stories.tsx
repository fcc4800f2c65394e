import { aircraftSheet } from '../testing/sheets.ts';
import { many } from '../testing/tables.ts';
import { SheetView } from './sheet-view.tsx';
import { storiesOf } from './story.ts';

const bare = { ...aircraftSheet, blocks: [], working: [], warnings: [], titleBlock: { fields: [] } };
const notComputed = {
  ...bare,
  answer: [{ text: 'Treat it as due: the answer could not be computed.' }],
  because: 'A test case of W-14 fails, so it answers for no aircraft.',
  warnings: ['The last reading is 190 days old.', 'Two papers contradict each other.'],
};
export default storiesOf('Sheet', [
  { state: 'typical', shows: 'typical', Draw: () => <SheetView sheet={aircraftSheet} /> },
  { state: 'empty', shows: 'empty', Draw: () => <SheetView sheet={bare} /> },
  { state: 'failing', shows: 'failing', Draw: () => <SheetView sheet={notComputed} /> },
  {
    state: 'overflowing',
    shows: 'overflowing',
    Draw: () => (
      <SheetView
        sheet={{
          ...bare,
          blocks: [{ ...many, rows: many.rows.slice(0, 30) }],
          warnings: ['A long warning. '.repeat(40)],
        }}
      />
    ),
  },
]);
