import { Link, useSearchParams } from 'wouter';
import { documentPath } from '../../api/directives.ts';
import { useSheet } from '../../api/sheets.ts';
import { Loaded } from '../../parts/loading.tsx';
import { Page } from '../../parts/page.tsx';
import { SheetView } from '../../parts/sheet-view.tsx';
import { WithdrawForm } from './withdraw-form.tsx';

/** The rule read back, so that a person can hold it against the official text; its history; what can be done with it. */
export function DirectivePage({ shop, number }: { shop: string; number: string }) {
  const [search] = useSearchParams();
  const issue = search.get('issue') ?? undefined;
  const sheet = useSheet(shop, ['directives', number], { issue });
  const own = `/${shop}/directive/${encodeURIComponent(number)}`;
  return (
    <Page shop={shop} title={`Directive ${number}`}>
      <Loaded query={sheet} what="Reading the directive">
        {(s) => <SheetView sheet={s} />}
      </Loaded>
      <div className="actions no-print">
        <Link className="button" href={`${own}/write`}>
          Write the next issue
        </Link>
        <a className="button" href={documentPath(shop, number, 'yaml', issue)}>
          Export as one document
        </a>
        <Link className="button" href={`/${shop}/directive`}>
          All directives
        </Link>
      </div>
      {sheet.data ? <WithdrawForm shop={shop} number={number} {...(issue ? { issue } : {})} /> : null}
    </Page>
  );
}
