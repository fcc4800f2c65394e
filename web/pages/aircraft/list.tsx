import { Link } from 'wouter';
import { useSheet } from '../../api/sheets.ts';
import { Loaded } from '../../parts/loading.tsx';
import { Page } from '../../parts/page.tsx';
import { SheetView } from '../../parts/sheet-view.tsx';

export function AircraftListPage({ shop }: { shop: string }) {
  const sheet = useSheet(shop, ['aircraft']);
  return (
    <Page shop={shop} title="Aircraft">
      <Loaded query={sheet}>{(s) => <SheetView sheet={s} />}</Loaded>
      <div className="actions">
        <Link className="button" href={`/${shop}/import/caller`}>
          Answer a caller
        </Link>
        <Link className="button" href={`/${shop}/import`}>
          Drop a logbook
        </Link>
      </div>
    </Page>
  );
}
