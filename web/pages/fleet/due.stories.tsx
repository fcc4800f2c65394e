import type { Stories } from '../../parts/story.ts';
import { dueSheet } from '../../testing/fleet.ts';
import { DueView } from './due-view.tsx';

const backwards = { ...dueSheet(4), warnings: ['Dates of 4 aircraft are as of 20 Nov 2026 or later.'] };
const stories: Stories = {
  part: 'Due sheet',
  stories: [
    { state: 'typical', Draw: () => <DueView shop="own" sheet={dueSheet(14)} /> },
    { state: 'empty', Draw: () => <DueView shop="own" sheet={dueSheet(0)} /> },
    { state: 'failing', Draw: () => <DueView shop="own" sheet={backwards} /> },
    { state: 'long names', Draw: () => <DueView shop="own" sheet={dueSheet(6, true)} /> },
    { state: 'overflowing', Draw: () => <DueView shop="own" sheet={dueSheet(900)} /> },
  ],
};
export default stories;
