import { useSearchParams } from 'wouter';
import { useFleet } from '../../api/fleet.ts';
import { ErrorNotice } from '../../parts/error-notice.tsx';
import { Loading } from '../../parts/loading.tsx';
import { Page } from '../../parts/page.tsx';
import { FleetView } from './fleet-view.tsx';

export function FleetPage({ shop }: { shop: string }) {
  const [address] = useSearchParams();
  const fleet = useFleet(shop, [], { day: address.get('day') ?? undefined });
  const again = () => void fleet.refetch();
  return (
    <Page shop={shop} title="Fleet">
      {fleet.data ? (
        <FleetView shop={shop} sheet={fleet.data} error={fleet.error} again={again} />
      ) : fleet.error ? (
        <ErrorNotice error={fleet.error} again={again} />
      ) : (
        <Loading what="Reading the fleet" />
      )}
    </Page>
  );
}
