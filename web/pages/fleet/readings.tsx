import { useFleet } from '../../api/fleet.ts';
import { Loaded } from '../../parts/loading.tsx';
import { Page } from '../../parts/page.tsx';
import { ReadingsView } from './readings-view.tsx';

/** Whose last reading is old: what to write to the owner, and where his reply goes. */
export function ReadingsPage({ shop }: { shop: string }) {
  const sheet = useFleet(shop, ['readings']);
  return (
    <Page shop={shop} title="Readings wanted">
      <Loaded query={sheet} what="Looking for old readings">
        {(s) => <ReadingsView shop={shop} sheet={s} />}
      </Loaded>
    </Page>
  );
}
