import { storiesOf } from '../../parts/story.ts';
import { readingsSheet } from '../../testing/fleet.ts';
import { ReadingsView } from './readings-view.tsx';

export default storiesOf('Readings wanted', [
  { state: 'typical', shows: 'typical', Draw: () => <ReadingsView shop="own" sheet={readingsSheet(5)} /> },
  { state: 'empty', shows: 'empty', Draw: () => <ReadingsView shop="own" sheet={readingsSheet(0)} /> },
  { state: 'failing', shows: 'failing', Draw: () => <ReadingsView shop="own" sheet={readingsSheet(5)} gone /> },
  { state: 'long names', shows: 'overflowing', Draw: () => <ReadingsView shop="own" sheet={readingsSheet(4, true)} /> },
  { state: 'overflowing', shows: 'overflowing', Draw: () => <ReadingsView shop="own" sheet={readingsSheet(240)} /> },
]);
