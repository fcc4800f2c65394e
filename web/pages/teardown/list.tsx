import { Link, useLocation } from 'wouter';
import { freshPage } from '../../api/kept-at.ts';
import { useSheet } from '../../api/sheets.ts';
import { refuseOther } from '../../parts/basis/words.ts';
import { Loaded } from '../../parts/loading.tsx';
import { Page } from '../../parts/page.tsx';
import { SheetView } from '../../parts/sheet-view.tsx';
import { DocumentIn } from '../../parts/write/document-in.tsx';
import { handOver } from '../../parts/write/hand-over.ts';

/** Jobs with where they stand, structure maps, floors; where a new one begins. */
export function TeardownListPage({ shop }: { shop: string }) {
  const sheet = useSheet(shop, ['teardown']);
  const [, go] = useLocation();
  return (
    <Page shop={shop} title="Teardown">
      <Loaded query={sheet} what="Reading the jobs">
        {(s) => (
          <SheetView
            sheet={s}
            after={
              <div className="actions no-print">
                <Link className="button first" href={freshPage(shop, 'teardown')}>
                  Plan a teardown
                </Link>
                <Link className="button" href={freshPage(shop, 'structure')}>
                  Draw a structure map
                </Link>
                <Link className="button" href={freshPage(shop, 'floor')}>
                  Describe a floor
                </Link>
                <Link className="button" href={`/${shop}/teardown/calendar`}>
                  Calendar
                </Link>
              </div>
            }
          />
        )}
      </Loaded>
      <section className="sheet no-print" aria-labelledby="import-document">
        <h2 id="import-document">Import a teardown job</h2>
        <p className="soft">
          YAML or JSON, as its page exports it or a program wrote it. It opens in the form: look it over, keep it there.
        </p>
        <DocumentIn
          what="teardown job"
          button="Open it in the form"
          refuse={(given) => refuseOther('teardown', given)}
          take={(document) => {
            handOver('teardown', document);
            go(freshPage(shop, 'teardown'));
          }}
        />
      </section>
    </Page>
  );
}
