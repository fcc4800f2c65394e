import type { ReactNode } from 'react';
import { Link } from 'wouter';
import { KEPT_AT, listPage, ownPage } from '../../api/kept-at.ts';
import { useSheet, withQuery } from '../../api/sheets.ts';
import { shopPath } from '../../api/shops.ts';
import { type BasisWord, basisDocumentPath } from '../../api/usage.ts';
import { Loaded } from '../loading.tsx';
import { Page } from '../page.tsx';
import { SheetView } from '../sheet-view.tsx';
import { useUnits } from '../write/units.ts';
import { UnitsChooser } from '../write/units-chooser.tsx';
import { useAsked } from './asking.tsx';
import { SheetFiles } from './files.tsx';
import { WithdrawBasis } from './withdraw-basis.tsx';
import { WORD_NAMES } from './words.ts';

/** A kept document with its answer; its files; what can be done with it. */
export function BasisPage({
  shop,
  word,
  name,
  asking,
  after,
}: {
  shop: string;
  word: BasisWord;
  name: string;
  /** Further words of the question, under the answer. */
  asking?: ReactNode;
  /** What stands below the sheet. */
  after?: ReactNode;
}) {
  const units = useUnits();
  const { of } = useAsked();
  const asked = { units, mix: of('mix') };
  const at = [...KEPT_AT[word].api, name];
  const sheet = useSheet(shop, at, asked);
  const own = ownPage(shop, word, name);
  const path = (format: string) => withQuery(shopPath(shop, ...at), { ...asked, format });
  return (
    <Page shop={shop} title={sheet.data?.title ?? WORD_NAMES[word].one}>
      <Loaded query={sheet} what="Computing the answer">
        {(s) => (
          <SheetView
            sheet={s}
            after={
              <div className="actions no-print">
                {asking}
                <UnitsChooser />
                <SheetFiles path={path} what="this answer" />
              </div>
            }
          />
        )}
      </Loaded>
      {sheet.data ? after : null}
      <div className="actions no-print">
        <Link className="button" href={`${own}/write`}>
          Write a new issue
        </Link>
        <a className="button" href={basisDocumentPath(shop, word, name, 'yaml')} download>
          Export the document, YAML
        </a>
        <a className="button" href={basisDocumentPath(shop, word, name, 'json')} download>
          JSON<span className="hidden-text">: export the document</span>
        </a>
        <Link className="button" href={listPage(shop, word)}>
          {WORD_NAMES[word].all}
        </Link>
      </div>
      {sheet.data ? <WithdrawBasis shop={shop} word={word} name={name} title={sheet.data.title} /> : null}
    </Page>
  );
}
