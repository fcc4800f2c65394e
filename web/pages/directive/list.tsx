import { Link } from 'wouter';
import { useSheet } from '../../api/sheets.ts';
import { Loaded } from '../../parts/loading.tsx';
import { Page } from '../../parts/page.tsx';
import { SheetView } from '../../parts/sheet-view.tsx';
import { ImportDocument } from './import-document.tsx';

export function DirectiveListPage({ shop }: { shop: string }) {
  const sheet = useSheet(shop, ['directives']);
  return (
    <Page shop={shop} title="Directives">
      <Loaded query={sheet} what="Reading the directives">
        {(s) => (
          <SheetView
            sheet={s}
            after={
              <div className="actions no-print">
                <Link className="button first" href={`/${shop}/directive/new`}>
                  Write a directive
                </Link>
              </div>
            }
          />
        )}
      </Loaded>
      <ImportDocument shop={shop} />
    </Page>
  );
}
