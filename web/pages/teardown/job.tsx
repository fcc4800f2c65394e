import { Link } from 'wouter';
import { listPage, ownPage } from '../../api/kept-at.ts';
import { withQuery } from '../../api/sheets.ts';
import { shopPath } from '../../api/shops.ts';
import { useJobSheet, useTeardownChoices } from '../../api/teardown.ts';
import { basisDocumentPath } from '../../api/usage.ts';
import { SheetFiles } from '../../parts/basis/files.tsx';
import { WithdrawBasis } from '../../parts/basis/withdraw-basis.tsx';
import { Loaded } from '../../parts/loading.tsx';
import { Page } from '../../parts/page.tsx';
import { SheetView } from '../../parts/sheet-view.tsx';
import { useUnits } from '../../parts/write/units.ts';
import { UnitsChooser } from '../../parts/write/units-chooser.tsx';
import { type JobPageName, JobPages } from './job-pages.tsx';

const WAITS: Readonly<Record<JobPageName, string>> = {
  plan: 'Planning the job',
  schedule: 'Scheduling the job',
  shopping: 'Counting what is needed',
  quote: 'Computing the quote',
  cards: 'Setting the cards',
};

/** A page of a kept job: plan, schedule, shopping list, quote or work cards; its files; what can be done with it. */
export function JobPage({ shop, name, page }: { shop: string; name: string; page: JobPageName }) {
  const units = useUnits();
  const asked = { page, units };
  const sheet = useJobSheet(shop, name, asked);
  const of = useOpenAircraft(shop, name);
  const path = (format: string) => withQuery(shopPath(shop, 'teardown', 'jobs', name), { ...asked, format });
  return (
    <Page shop={shop} title={sheet.data?.subject ?? 'Teardown'} aircraft={of}>
      <JobPages shop={shop} name={name} here={page} />
      <Loaded query={sheet} what={WAITS[page]}>
        {(s) => (
          <SheetView
            sheet={s}
            after={
              <>
                {s.computing ? (
                  <p className="soft" role="status">
                    {s.computing}
                  </p>
                ) : null}
                <div className="actions no-print">
                  <UnitsChooser />
                  <SheetFiles path={path} what="this page" />
                </div>
              </>
            }
          />
        )}
      </Loaded>
      <div className="actions no-print">
        <Link className="button" href={`${ownPage(shop, 'teardown', name)}/write`}>
          Change the job
        </Link>
        <a className="button" href={basisDocumentPath(shop, 'teardown', name, 'yaml')} download>
          Export the document, YAML
        </a>
        <a className="button" href={basisDocumentPath(shop, 'teardown', name, 'json')} download>
          JSON<span className="hidden-text">: export the document</span>
        </a>
        <Link className="button" href={listPage(shop, 'teardown')}>
          All jobs, maps and floors
        </Link>
      </div>
      {sheet.data && page === 'plan' ? (
        <WithdrawBasis shop={shop} word="teardown" name={name} title={sheet.data.subject || sheet.data.title} />
      ) : null}
    </Page>
  );
}

/** The aircraft that a job is of, for the path at the left. */
function useOpenAircraft(shop: string, name: string) {
  const choices = useTeardownChoices(shop).data;
  const id = choices?.jobs.find((j) => j.name === name)?.aircraft;
  const row = choices?.aircraft.find((a) => a.id === id);
  return row ? { id: row.id, name: row.registration } : undefined;
}
