import type { Stories } from '../../parts/story.ts';
import { dueSheet } from '../../testing/fleet.ts';
import { DueView } from './due-view.tsx';

const stories: Stories = {
  part: 'Due sheet',
  stories: [
    { state: 'typical', Draw: () => <DueView shop="own" sheet={dueSheet(14)} /> },
    { state: 'empty', Draw: () => <DueView shop="own" sheet={dueSheet(0)} /> },
    { state: 'failing', Draw: () => <DueView shop="own" sheet={dueSheet(4)} gone /> },
    { state: 'long names', Draw: () => <DueView shop="own" sheet={dueSheet(6, true)} /> },
    { state: 'overflowing', Draw: () => <DueView shop="own" sheet={dueSheet(900)} /> },
  ],
};
export default stories;
