import { aircraftSheet } from '../testing/sheets.ts';
import { Answer } from './answer.tsx';
import type { Stories } from './story.ts';

const long = Array.from({ length: 6 }, () => aircraftSheet.answer).flat();
const stories: Stories = {
  part: 'Answer',
  stories: [
    { state: 'typical', Draw: () => <Answer answer={aircraftSheet.answer} because={aircraftSheet.because} /> },
    { state: 'empty', Draw: () => <Answer answer={[{ text: 'No directive has been adopted yet.' }]} /> },
    {
      state: 'failing',
      Draw: () => <Answer answer={[{ text: 'Treat as due: not computed.' }]} because="W-14 failed." />,
    },
    { state: 'overflowing', Draw: () => <Answer answer={long} because={aircraftSheet.because} /> },
  ],
};
export default stories;
