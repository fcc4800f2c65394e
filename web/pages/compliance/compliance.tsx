import { useSearchParams } from 'wouter';
import { useChoices } from '../../api/choices.ts';
import { useSheet, withQuery } from '../../api/sheets.ts';
import { shopPath } from '../../api/shops.ts';
import { Loaded } from '../../parts/loading.tsx';
import { Page } from '../../parts/page.tsx';
import { SheetView } from '../../parts/sheet-view.tsx';
import { AccomplishedForm } from '../aircraft/forms/accomplished-form.tsx';
import { AlternativeForm } from '../aircraft/forms/alternative-form.tsx';
import { ListCheckedForm } from '../aircraft/forms/list-checked-form.tsx';
import { PermitForm } from '../aircraft/forms/permit-form.tsx';
import { Files } from './files.tsx';

/** The state of every directive issue on one aircraft, side by side, and what a person adds to it. */
export function CompliancePage({ shop, id }: { shop: string; id: string }) {
  const [search] = useSearchParams();
  const asked = {
    day: search.get('day') ?? undefined,
    known: search.get('known') ?? undefined,
    known_on: search.get('known_on') ?? undefined,
  };
  const then = Boolean(asked.known ?? asked.known_on);
  const sheet = useSheet(shop, ['aircraft', id, 'compliance'], asked);
  const choices = useChoices(shop, id);
  const name = choices.data?.registration ?? sheet.data?.subject ?? 'Aircraft';
  const form = { shop, aircraft: id, choices: choices.data };
  const key = choices.data?.day ?? 'no day yet';
  const path = (format: string) => withQuery(shopPath(shop, 'aircraft', id, 'compliance'), { ...asked, format });
  return (
    <Page shop={shop} title={`Compliance list: ${name}`} aircraft={{ id, name }}>
      <Loaded query={sheet}>
        {(s) => <SheetView sheet={s} after={<Files path={path} what="compliance list" />} />}
      </Loaded>
      {sheet.data && choices.data && !then ? (
        <section className="sheet no-print" aria-labelledby="add">
          <h2 id="add">Add to the record</h2>
          <AccomplishedForm key={`a${key}`} {...form} />
          <AlternativeForm key={`m${key}`} {...form} />
          <PermitForm key={`p${key}`} {...form} />
          <ListCheckedForm key={`l${key}`} {...form} />
        </section>
      ) : null}
    </Page>
  );
}
