import { Link } from 'wouter';
import { useChoices } from '../../api/choices.ts';
import { useSheet, withQuery } from '../../api/sheets.ts';
import { shopPath } from '../../api/shops.ts';
import { SheetFiles } from '../../parts/basis/files.tsx';
import { Loaded } from '../../parts/loading.tsx';
import { Page } from '../../parts/page.tsx';
import { SheetView } from '../../parts/sheet-view.tsx';

/** Teardown jobs of one aircraft, the maps that fit its model, and where a new job begins. */
export function AircraftTeardownPage({ shop, id }: { shop: string; id: string }) {
  const sheet = useSheet(shop, ['aircraft', id, 'teardown']);
  const name = useChoices(shop, id).data?.registration ?? 'Aircraft';
  const path = (format: string) => withQuery(shopPath(shop, 'aircraft', id, 'teardown'), { format });
  return (
    <Page shop={shop} title={`Teardown: ${name}`} aircraft={{ id, name }}>
      <Loaded query={sheet} what="Reading the jobs of this aircraft">
        {(s) => (
          <SheetView
            sheet={s}
            after={
              <div className="actions no-print">
                <Link className="button first" href={withQuery(`/${shop}/teardown/new`, { aircraft: id })}>
                  Plan a teardown of {name}
                </Link>
                <Link className="button" href={`/${shop}/teardown/maps/new`}>
                  Draw a structure map
                </Link>
                <SheetFiles path={path} what={`the teardown jobs of ${name}`} />
              </div>
            }
          />
        )}
      </Loaded>
    </Page>
  );
}
