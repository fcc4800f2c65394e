import { storiesOf } from '../../parts/story.ts';
import { fleetSheet } from '../../testing/fleet.ts';
import { FleetView } from './fleet-view.tsx';

const computing = 'The answers of 120 of 240 aircraft are being computed; until then they are treated as due.';
export default storiesOf('Fleet', [
  { state: 'typical', shows: 'typical', Draw: () => <FleetView shop="own" sheet={fleetSheet(24)} /> },
  { state: 'empty', shows: 'empty', Draw: () => <FleetView shop="own" sheet={fleetSheet(0)} /> },
  { state: 'computing', shows: 'typical', Draw: () => <FleetView shop="own" sheet={fleetSheet(12, { computing })} /> },
  { state: 'failing', shows: 'failing', Draw: () => <FleetView shop="own" sheet={fleetSheet(12)} gone /> },
  { state: 'long names', shows: 'overflowing', Draw: () => <FleetView shop="own" sheet={fleetSheet(8, {}, true)} /> },
  { state: 'overflowing', shows: 'overflowing', Draw: () => <FleetView shop="own" sheet={fleetSheet(2000)} /> },
]);
