import { Link, useSearchParams } from 'wouter';
import type { Block } from '../../../sheets/model.ts';
import { latestIssues, useChoices } from '../../api/choices.ts';
import { useSheet } from '../../api/sheets.ts';
import { Loaded } from '../../parts/loading.tsx';
import { Page } from '../../parts/page.tsx';
import { SheetView } from '../../parts/sheet-view.tsx';
import { AsKnown, useKnown } from '../papers/as-known.tsx';
import { EntryForms } from './forms/entry-forms.tsx';
import { RateChooser } from './rate-chooser.tsx';
import { idsOf } from './rooms.ts';

export function AircraftPage({ shop, id }: { shop: string; id: string }) {
  const [search] = useSearchParams();
  const rate = search.get('rate_h_per_year') ?? undefined;
  const asked = useKnown();
  const past = asked.known !== undefined || asked.known_on !== undefined;
  const sheet = useSheet(shop, ['aircraft', id], { ...asked, rate_h_per_year: rate });
  const choices = useChoices(shop, id);
  const name = choices.data?.registration ?? sheet.data?.title ?? 'Aircraft';
  const ids = idsOf(sheet.data?.blocks ?? []);
  const idOf = (block: Block) => ids.anchors.get(block);
  return (
    <Page shop={shop} title={name} aircraft={{ id, name, rooms: ids.rooms }}>
      <Loaded query={sheet}>
        {(s) => <SheetView sheet={s} idOf={idOf} after={<Asking rate={rate ?? ''} known={asked.known_on ?? ''} />} />}
      </Loaded>
      {sheet.error && past ? <AsKnown key={asked.known_on ?? ''} /> : null}
      {sheet.data && !past ? (
        <>
          <Letters shop={shop} id={id} directives={latestIssues(choices.data?.directives ?? [])} />
          <p className="no-print">
            A row was misread, or a book was found?{' '}
            <Link href={`/${shop}/aircraft/${encodeURIComponent(id)}/papers`}>
              Papers of {name}: typed beside the scan, corrected, shown as known on a day
            </Link>
          </p>
          <EntryForms shop={shop} aircraft={id} choices={choices.data} />
        </>
      ) : null}
    </Page>
  );
}

/** At which flying rate, and with which papers. */
const Asking = ({ rate, known }: { rate: string; known: string }) => (
  <>
    <RateChooser rate={rate} />
    <AsKnown key={known} />
  </>
);

function Letters({
  shop,
  id,
  directives,
}: {
  shop: string;
  id: string;
  directives: readonly { readonly number: string; readonly title: string }[];
}) {
  if (directives.length === 0) return null;
  return (
    <section className="sheet no-print" aria-labelledby="letters">
      <h2 id="letters">Letter to the owner</h2>
      <div className="actions">
        {directives.map((d) => (
          <Link
            key={d.number}
            className="button"
            href={`/${shop}/letter/${encodeURIComponent(id)}/${encodeURIComponent(d.number)}`}
          >
            On {d.number}: {d.title}
          </Link>
        ))}
      </div>
    </section>
  );
}
