import { useFleet } from '../../api/fleet.ts';
import { FleetFrame } from './fleet-frame.tsx';
import { ReadingsView } from './readings-view.tsx';

/** Whose last reading is old: what to write to the owner, and where his reply goes. */
export function ReadingsPage({ shop }: { shop: string }) {
  const readings = useFleet(shop, ['readings']);
  return (
    <FleetFrame shop={shop} title="Readings wanted" query={readings}>
      {(sheet, gone) => <ReadingsView shop={shop} sheet={sheet} gone={gone} />}
    </FleetFrame>
  );
}
