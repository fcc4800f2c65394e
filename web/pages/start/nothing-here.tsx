import { Link } from 'wouter';
import { Page } from '../../parts/page.tsx';

export function NothingHere() {
  return (
    <Page shop="own" title="No such page">
      <h1 className="say">There is no page at this address.</h1>
      <p className="because">The address may be cut short, or belong to data that was removed.</p>
      <Link className="button" href="/">
        To the start
      </Link>
    </Page>
  );
}
