import { Link } from 'wouter';
import { useSheet, withQuery } from '../../api/sheets.ts';
import { shopPath } from '../../api/shops.ts';
import { useTeardownChoices } from '../../api/teardown.ts';
import { useAsked } from '../../parts/basis/asking.tsx';
import { SheetFiles } from '../../parts/basis/files.tsx';
import { Loaded } from '../../parts/loading.tsx';
import { Page } from '../../parts/page.tsx';
import { SheetView } from '../../parts/sheet-view.tsx';
import { OnFloor } from './on-floor.tsx';

/** Every job that is not finished, on the floor they share. */
export function CalendarPage({ shop }: { shop: string }) {
  const { of } = useAsked();
  const asked = { floor: of('floor') };
  const sheet = useSheet(shop, ['teardown', 'calendar'], asked);
  const floors = useTeardownChoices(shop).data?.floors ?? [];
  const path = (format: string) => withQuery(shopPath(shop, 'teardown', 'calendar'), { ...asked, format });
  const asking = (
    <div className="actions no-print">
      {floors.length > 1 ? <OnFloor floors={floors} /> : null}
      <SheetFiles path={path} what="the calendar" />
      <Link className="button" href={`/${shop}/teardown`}>
        All jobs, maps and floors
      </Link>
    </div>
  );
  return (
    <Page shop={shop} title="Calendar">
      <Loaded query={sheet} what="Scheduling all jobs together">
        {(s) => <SheetView sheet={s} after={sheet.error ? null : asking} />}
      </Loaded>
      {sheet.error ? asking : null}
    </Page>
  );
}
