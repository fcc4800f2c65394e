import { working } from '../testing/tables.ts';
import { Caution, Warnings } from './caution.tsx';
import type { Stories } from './story.ts';
import { Working } from './working.tsx';

const long = working.map((s) => ({
  ...s,
  formula: 'hours.tow * 3 + hours.survey * 2 + '.repeat(12),
  entries: Array.from({ length: 60 }, (_, i) => String(i)),
}));
const stories: Stories = {
  part: 'Working, caution',
  stories: [
    { state: 'working, typical', Draw: () => <Working steps={working} /> },
    { state: 'working, empty', Draw: () => <Working steps={[]} /> },
    { state: 'working, overflowing', Draw: () => <Working steps={long} /> },
    { state: 'caution, typical', Draw: () => <Caution text="Figures inform; they approve nothing." /> },
    { state: 'caution, empty', Draw: () => <Caution text={undefined} /> },
    { state: 'warnings, typical', Draw: () => <Warnings warnings={['The last reading is 190 days old.']} /> },
  ],
};
export default stories;
