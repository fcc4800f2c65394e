import { useSearchParams } from 'wouter';
import { useFleet } from '../../api/fleet.ts';
import { FleetFrame } from './fleet-frame.tsx';
import { FleetView } from './fleet-view.tsx';

export function FleetPage({ shop }: { shop: string }) {
  const [address] = useSearchParams();
  const fleet = useFleet(shop, [], { day: address.get('day') ?? undefined });
  return (
    <FleetFrame shop={shop} title="Fleet" query={fleet}>
      {(sheet, gone) => <FleetView shop={shop} sheet={sheet} gone={gone} />}
    </FleetFrame>
  );
}
