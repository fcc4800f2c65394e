import { useSheet } from '../../api/sheets.ts';
import { Loaded } from '../../parts/loading.tsx';
import { Page } from '../../parts/page.tsx';
import { SheetView } from '../../parts/sheet-view.tsx';
import { AdoptForm } from './adopt-form.tsx';

export function DirectiveListPage({ shop }: { shop: string }) {
  const sheet = useSheet(shop, ['directives']);
  return (
    <Page shop={shop} title="Directives">
      <Loaded query={sheet} what="Reading the directives">
        {(s) => <SheetView sheet={s} />}
      </Loaded>
      <AdoptForm shop={shop} />
    </Page>
  );
}
