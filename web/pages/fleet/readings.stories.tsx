import type { Stories } from '../../parts/story.ts';
import { readingsSheet } from '../../testing/fleet.ts';
import { ReadingsView } from './readings-view.tsx';

const stories: Stories = {
  part: 'Readings wanted',
  stories: [
    { state: 'typical', Draw: () => <ReadingsView shop="own" sheet={readingsSheet(5)} /> },
    { state: 'empty', Draw: () => <ReadingsView shop="own" sheet={readingsSheet(0)} /> },
    { state: 'failing', Draw: () => <ReadingsView shop="own" sheet={readingsSheet(5)} gone /> },
    { state: 'long names', Draw: () => <ReadingsView shop="own" sheet={readingsSheet(4, true)} /> },
    { state: 'overflowing', Draw: () => <ReadingsView shop="own" sheet={readingsSheet(240)} /> },
  ],
};
export default stories;
