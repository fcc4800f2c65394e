import { storiesOf } from '../../parts/story.ts';
import { letterSheet } from '../../testing/sheets.ts';
import { LetterView } from './letter-view.tsx';

const LONG =
  'The heirs of a flying club that was wound up in the spring of 2015 and whose name fills two lines of any form';
const sender = ['Ostrey Field', 'hangar 4', 'M. Orne'];
const paragraphs = Array.from({ length: 24 }, () => `${LONG}. `.repeat(3));
export default storiesOf('Letter', [
  { state: 'typical', shows: 'typical', Draw: () => <LetterView sheet={{ ...letterSheet, sender }} /> },
  { state: 'empty', shows: 'empty', Draw: () => <LetterView sheet={{ ...letterSheet, blocks: [], because: '' }} /> },
  {
    state: 'failing',
    shows: 'failing',
    Draw: () => (
      <LetterView
        sheet={{
          ...letterSheet,
          sender,
          answer: [{ text: 'Treat it as due: the answer could not be computed.' }],
          blocks: [],
          warnings: ['A test case of W-14 fails, so it answers for no aircraft.'],
        }}
      />
    ),
  },
  {
    state: 'overflowing',
    shows: 'overflowing',
    Draw: () => (
      <LetterView
        sheet={{ ...letterSheet, title: LONG, subject: LONG, blocks: [{ block: 'prose', title: LONG, paragraphs }] }}
      />
    ),
  },
]);
