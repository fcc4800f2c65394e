import { useMutation, useQueryClient } from '@tanstack/react-query';
import { useLocation } from 'wouter';
import { listPage } from '../../api/kept-at.ts';
import { type BasisWord, withdrawBasis } from '../../api/usage.ts';
import { valuesOf } from '../../pages/aircraft/forms/read.ts';
import { BusyButton } from '../busy-button.tsx';
import { ErrorNotice } from '../error-notice.tsx';
import { Area, Input } from '../field.tsx';

/** Taking a kept document back, with name and reason. Nothing kept is ever deleted. */
export function WithdrawBasis({
  shop,
  word,
  name,
  title,
}: {
  shop: string;
  word: BasisWord;
  name: string;
  title: string;
}) {
  const queries = useQueryClient();
  const [, go] = useLocation();
  const taking = useMutation({
    mutationFn: (asked: { because: string; by: string }) => withdrawBasis(shop, word, name, asked),
    onSuccess: async () => {
      go(listPage(shop, word));
      await queries.invalidateQueries();
    },
  });
  return (
    <section className="sheet no-print" aria-labelledby="withdraw">
      <details className="form">
        <summary id="withdraw">Withdraw {title}</summary>
        <form
          onSubmit={(e) => {
            e.preventDefault();
            const v = valuesOf(e.currentTarget);
            taking.mutate({ because: v.text('because') ?? '', by: v.text('by') ?? '' });
          }}
        >
          <p className="soft">From then on no page rests on it. All of it stays in the log.</p>
          <div className="fields">
            <Input label="Withdrawn by" name="by" required />
            <Area label="Reason" name="because" required />
          </div>
          <ErrorNotice error={taking.error} />
          <div className="actions">
            <BusyButton busy={taking.isPending}>{taking.isPending ? 'Withdrawing ...' : 'Withdraw it'}</BusyButton>
          </div>
        </form>
      </details>
    </section>
  );
}
