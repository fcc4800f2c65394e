import type { Stories } from '../../parts/story.ts';
import { readingsSheet } from '../../testing/fleet.ts';
import { ReadingsView } from './readings-view.tsx';

const computing = '3 of 5 aircraft are being computed; until then treat them as due.';
const stories: Stories = {
  part: 'Readings wanted',
  stories: [
    { state: 'typical', Draw: () => <ReadingsView shop="own" sheet={readingsSheet(5)} /> },
    { state: 'empty', Draw: () => <ReadingsView shop="own" sheet={readingsSheet(0)} /> },
    { state: 'failing', Draw: () => <ReadingsView shop="own" sheet={{ ...readingsSheet(5), computing }} /> },
    { state: 'long names', Draw: () => <ReadingsView shop="own" sheet={readingsSheet(4, true)} /> },
    { state: 'overflowing', Draw: () => <ReadingsView shop="own" sheet={readingsSheet(240)} /> },
  ],
};
export default stories;
