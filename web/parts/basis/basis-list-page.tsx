import { Link, useLocation } from 'wouter';
import { freshPage } from '../../api/kept-at.ts';
import { useSheet } from '../../api/sheets.ts';
import type { BasisWord } from '../../api/usage.ts';
import { Loaded } from '../loading.tsx';
import { Page } from '../page.tsx';
import { SheetView } from '../sheet-view.tsx';
import { DocumentIn } from '../write/document-in.tsx';
import { handOver } from '../write/hand-over.ts';
import { refuseOther, WORD_NAMES } from './words.ts';

/** What a shop keeps of a word, and the two ways to more: written, or brought as a document. */
export function BasisListPage({ shop, word, title }: { shop: string; word: BasisWord; title: string }) {
  const sheet = useSheet(shop, [word]);
  const [, go] = useLocation();
  const { one } = WORD_NAMES[word];
  return (
    <Page shop={shop} title={title}>
      <Loaded query={sheet} what={`Reading what is kept`}>
        {(s) => (
          <SheetView
            sheet={s}
            after={
              <div className="actions no-print">
                <Link className="button first" href={freshPage(shop, word)}>
                  Write a {one}
                </Link>
              </div>
            }
          />
        )}
      </Loaded>
      <section className="sheet no-print" aria-labelledby="import-document">
        <h2 id="import-document">Import a {one}</h2>
        <p className="soft">
          YAML or JSON, as its page exports it or a program wrote it. It opens in the form: look it over, keep it there.
        </p>
        <DocumentIn
          what={one}
          button="Open it in the form"
          refuse={(given) => refuseOther(word, given)}
          take={(document) => {
            handOver(word, document);
            go(freshPage(shop, word));
          }}
        />
      </section>
    </Page>
  );
}
