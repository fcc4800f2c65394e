import { Link, useSearchParams } from 'wouter';
import { useFleet } from '../../api/fleet.ts';
import { DueView } from './due-view.tsx';
import { FleetFrame } from './fleet-frame.tsx';

/** What falls due within a span of days, as a page and as a file. */
export function DuePage({ shop }: { shop: string }) {
  const [address] = useSearchParams();
  const span = { from: address.get('from') ?? undefined, to: address.get('to') ?? undefined };
  const due = useFleet(shop, ['due'], span);
  const usual = (
    <Link className="button" href={`/${shop}/fleet/due`}>
      Show the usual days
    </Link>
  );
  return (
    <FleetFrame shop={shop} title="Due sheet" query={due} otherwise={usual}>
      {(sheet, gone) => <DueView shop={shop} sheet={sheet} gone={gone} />}
    </FleetFrame>
  );
}
