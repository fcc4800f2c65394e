import { useChoices } from '../../api/choices.ts';
import { useGrowthChoices } from '../../api/growth.ts';
import { useSheet, withQuery } from '../../api/sheets.ts';
import { shopPath } from '../../api/shops.ts';
import { AskingOf, useAsked } from '../../parts/basis/asking.tsx';
import { AskingMix } from '../../parts/basis/asking-mix.tsx';
import { SheetFiles } from '../../parts/basis/files.tsx';
import { Loaded } from '../../parts/loading.tsx';
import { Page } from '../../parts/page.tsx';
import { SheetView } from '../../parts/sheet-view.tsx';
import { useUnits } from '../../parts/write/units.ts';
import { UnitsChooser } from '../../parts/write/units-chooser.tsx';
import { AsKnown, useKnown } from '../papers/as-known.tsx';
import { WithScatter } from './chance.tsx';

/** How fast a crack would grow in one aircraft, and how often to look; never longer than its directives. */
export function AircraftGrowthPage({ shop, id }: { shop: string; id: string }) {
  const { of } = useAsked();
  const known = useKnown();
  const units = useUnits();
  const asked = { ...known, units, basis: of('basis'), part: of('part'), mix: of('mix') };
  const sheet = useSheet(shop, ['aircraft', id, 'growth'], asked);
  const choices = useChoices(shop, id);
  const documents = useGrowthChoices(shop);
  const kept = documents.data?.kept ?? [];
  const name = choices.data?.registration ?? 'Aircraft';
  const path = (format: string) => withQuery(shopPath(shop, 'aircraft', id, 'growth'), { ...asked, format });
  const chosen = kept.filter((k) => asked.basis === '' || k.name === asked.basis);
  const uses = [...new Map(chosen.flatMap((k) => k.uses).map((u) => [u.use, u])).values()];
  const past = known.known !== undefined || known.known_on !== undefined;
  const basis = kept.find((k) => (asked.basis ? k.name === asked.basis : k.title === sheet.data?.title));
  const { part, mix } = asked;
  const source = { ...(part ? { part } : {}), ...(mix ? { mix } : {}), ...(known.day ? { day: known.day } : {}) };
  const asking = (
    <div className="asking no-print">
      <div className="rates">
        <AskingOf kept={kept} parts={choices.data?.parts ?? []} />
        {uses.length ? <AskingMix uses={uses} /> : null}
        <UnitsChooser />
      </div>
      <AsKnown key={asked.known_on ?? ''} />
      <div className="actions">
        <SheetFiles path={path} what={`the growth of ${name}`} />
      </div>
    </div>
  );
  return (
    <Page shop={shop} title={`Growth: ${name}`} aircraft={{ id, name }}>
      <Loaded query={sheet} what="Computing how a crack would grow">
        {(s) => <SheetView sheet={s} after={sheet.error ? null : asking} />}
      </Loaded>
      {sheet.error ? asking : null}
      {basis && sheet.data && !past ? (
        <WithScatter shop={shop} source={{ ...source, name: basis.name, aircraft: id }} />
      ) : null}
    </Page>
  );
}
