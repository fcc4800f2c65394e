import { useChoices } from '../../api/choices.ts';
import { useSheet, withQuery } from '../../api/sheets.ts';
import { shopPath } from '../../api/shops.ts';
import { useUsageChoices } from '../../api/usage.ts';
import { AskingOf, useAsked } from '../../parts/basis/asking.tsx';
import { SheetFiles } from '../../parts/basis/files.tsx';
import { Loaded } from '../../parts/loading.tsx';
import { Page } from '../../parts/page.tsx';
import { SheetView } from '../../parts/sheet-view.tsx';
import { useUnits } from '../../parts/write/units.ts';
import { UnitsChooser } from '../../parts/write/units-chooser.tsx';
import { AsKnown, useKnown } from '../papers/as-known.tsx';

/** How hard one aircraft has been flown, by its record and a kept usage document. */
export function AircraftUsagePage({ shop, id }: { shop: string; id: string }) {
  const { of } = useAsked();
  const known = useKnown();
  const units = useUnits();
  const asked = { ...known, units, basis: of('basis'), part: of('part') };
  const sheet = useSheet(shop, ['aircraft', id, 'usage'], asked);
  const choices = useChoices(shop, id);
  const documents = useUsageChoices(shop);
  const name = choices.data?.registration ?? 'Aircraft';
  const path = (format: string) => withQuery(shopPath(shop, 'aircraft', id, 'usage'), { ...asked, format });
  const asking = (
    <div className="asking no-print">
      <div className="rates">
        <AskingOf kept={documents.data?.kept ?? []} parts={choices.data?.parts ?? []} />
        <UnitsChooser />
      </div>
      <AsKnown key={asked.known_on ?? ''} />
      <div className="actions">
        <SheetFiles path={path} what={`the usage of ${name}`} />
      </div>
    </div>
  );
  return (
    <Page shop={shop} title={`Usage: ${name}`} aircraft={{ id, name }}>
      <Loaded query={sheet} what="Computing how hard it was flown">
        {(s) => <SheetView sheet={s} after={sheet.error ? null : asking} />}
      </Loaded>
      {sheet.error ? asking : null}
    </Page>
  );
}
