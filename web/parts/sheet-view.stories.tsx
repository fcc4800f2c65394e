import { LetterView } from '../pages/letter/letter-view.tsx';
import { aircraftSheet, letterSheet } from '../testing/sheets.ts';
import { SheetView } from './sheet-view.tsx';
import type { Stories } from './story.ts';

const bare = { ...aircraftSheet, blocks: [], working: [], warnings: [], titleBlock: { fields: [] } };
const stories: Stories = {
  part: 'Sheet',
  stories: [
    { state: 'typical', Draw: () => <SheetView sheet={aircraftSheet} /> },
    { state: 'empty', Draw: () => <SheetView sheet={bare} /> },
    { state: 'letter', Draw: () => <LetterView sheet={letterSheet} /> },
  ],
};
export default stories;
