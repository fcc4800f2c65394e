import { useApprovalChoices } from '../../api/approvals.ts';
import { useSheet } from '../../api/sheets.ts';
import { Loaded } from '../../parts/loading.tsx';
import { Page } from '../../parts/page.tsx';
import { SheetView } from '../../parts/sheet-view.tsx';
import { ManyAlternativesForm } from './many-form.tsx';
import { Revoke } from './revoke.tsx';

/** Every alternative and permit of the shop; whom a revocation would hit is said before one revokes. */
export function ApprovalsPage({ shop }: { shop: string }) {
  const sheet = useSheet(shop, ['fleet', 'approvals']);
  const choices = useApprovalChoices(shop);
  return (
    <Page shop={shop} title="Alternatives and permits">
      <Loaded query={sheet}>{(s) => <SheetView sheet={s} />}</Loaded>
      {choices.data ? (
        <>
          <Revoke shop={shop} references={choices.data.references} day={choices.data.day} />
          <section className="sheet no-print" aria-labelledby="add">
            <h2 id="add">Add to the record</h2>
            <ManyAlternativesForm shop={shop} choices={choices.data} />
          </section>
        </>
      ) : null}
    </Page>
  );
}
