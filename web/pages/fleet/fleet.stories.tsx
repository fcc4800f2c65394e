import type { Stories } from '../../parts/story.ts';
import { fleetSheet } from '../../testing/fleet.ts';
import { FleetView } from './fleet-view.tsx';

const computing = 'The answers of 120 of 240 aircraft are being computed; until then they are treated as due.';
const stories: Stories = {
  part: 'Fleet',
  stories: [
    { state: 'typical', Draw: () => <FleetView shop="own" sheet={fleetSheet(24)} /> },
    { state: 'empty', Draw: () => <FleetView shop="own" sheet={fleetSheet(0)} /> },
    { state: 'computing', Draw: () => <FleetView shop="own" sheet={fleetSheet(12, { computing })} /> },
    { state: 'failing', Draw: () => <FleetView shop="own" sheet={fleetSheet(12)} gone /> },
    { state: 'long names', Draw: () => <FleetView shop="own" sheet={fleetSheet(8, {}, true)} /> },
    { state: 'overflowing', Draw: () => <FleetView shop="own" sheet={fleetSheet(2000)} /> },
  ],
};
export default stories;
