import { Link } from 'wouter';
import { useSheet } from '../../api/sheets.ts';
import { Loaded } from '../../parts/loading.tsx';
import { Page } from '../../parts/page.tsx';
import { SheetView } from '../../parts/sheet-view.tsx';

/** The rule read back, so that a person can hold it against the official text. */
export function DirectivePage({ shop, number }: { shop: string; number: string }) {
  const sheet = useSheet(shop, ['directives', number]);
  return (
    <Page shop={shop} title={`Directive ${number}`}>
      <Loaded query={sheet} what="Reading the directive">
        {(s) => <SheetView sheet={s} />}
      </Loaded>
      <div className="actions">
        <Link className="button" href={`/${shop}/directive`}>
          All directives
        </Link>
      </div>
    </Page>
  );
}
