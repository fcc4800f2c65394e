import { Page } from '../../parts/page.tsx';

export function ImportPage({ shop }: { shop: string }) {
  return (
    <Page shop={shop} title="Import a logbook">
      <h1 className="say">Drop the logbook here.</h1>
    </Page>
  );
}
