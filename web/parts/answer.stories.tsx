import { aircraftSheet } from '../testing/sheets.ts';
import { Answer } from './answer.tsx';
import { storiesOf } from './story.ts';

const long = Array.from({ length: 6 }, () => aircraftSheet.answer).flat();
export default storiesOf('Answer', [
  {
    state: 'typical',
    shows: 'typical',
    Draw: () => <Answer answer={aircraftSheet.answer} because={aircraftSheet.because} />,
  },
  {
    state: 'typical, with the page that answers the rest',
    shows: 'typical',
    Draw: () => (
      <Answer
        answer={[{ text: 'The next look is ' }, { text: 'overdue by 161 h', figure: true }, { text: '.' }]}
        because="What that means for the next flight is for the text of the directive and the authority to say."
        see={{ text: 'What is due on this aircraft', href: '/own/aircraft/a' }}
      />
    ),
  },
  { state: 'empty', shows: 'empty', Draw: () => <Answer answer={[{ text: 'No directive has been adopted yet.' }]} /> },
  {
    state: 'failing',
    shows: 'failing',
    Draw: () => <Answer answer={[{ text: 'Treat as due: not computed.' }]} because="W-14 failed." />,
  },
  { state: 'overflowing', shows: 'overflowing', Draw: () => <Answer answer={long} because={aircraftSheet.because} /> },
]);
