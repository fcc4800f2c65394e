import { storiesOf } from '../../parts/story.ts';
import { dueSheet } from '../../testing/fleet.ts';
import { DueView } from './due-view.tsx';

export default storiesOf('Due sheet', [
  { state: 'typical', shows: 'typical', Draw: () => <DueView shop="own" sheet={dueSheet(14)} /> },
  { state: 'empty', shows: 'empty', Draw: () => <DueView shop="own" sheet={dueSheet(0)} /> },
  { state: 'failing', shows: 'failing', Draw: () => <DueView shop="own" sheet={dueSheet(4)} gone /> },
  { state: 'long names', shows: 'overflowing', Draw: () => <DueView shop="own" sheet={dueSheet(6, true)} /> },
  { state: 'overflowing', shows: 'overflowing', Draw: () => <DueView shop="own" sheet={dueSheet(900)} /> },
]);
