import { Link, useSearchParams } from 'wouter';
import { useFleet } from '../../api/fleet.ts';
import { Loaded } from '../../parts/loading.tsx';
import { Page } from '../../parts/page.tsx';
import { DueView } from './due-view.tsx';

/** What falls due within a span of days, as a page and as a file. */
export function DuePage({ shop }: { shop: string }) {
  const [address] = useSearchParams();
  const span = { from: address.get('from') ?? undefined, to: address.get('to') ?? undefined };
  const sheet = useFleet(shop, ['due'], span);
  return (
    <Page shop={shop} title="Due sheet">
      <Loaded query={sheet} what="Reading the fleet">
        {(s) => <DueView shop={shop} sheet={s} />}
      </Loaded>
      {sheet.error && !sheet.data ? (
        <Link className="button" href={`/${shop}/fleet/due`}>
          Show the usual days
        </Link>
      ) : null}
    </Page>
  );
}
