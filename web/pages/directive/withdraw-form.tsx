import { useMutation, useQueryClient } from '@tanstack/react-query';
import { withdraw } from '../../api/directives.ts';
import { today } from '../../api/today.ts';
import { BusyButton } from '../../parts/busy-button.tsx';
import { ErrorNotice } from '../../parts/error-notice.tsx';
import { Field, Input } from '../../parts/field.tsx';
import { given, valuesOf } from '../aircraft/forms/read.ts';

/** Taking a directive back: with name, day and reason. Nothing adopted is ever deleted. */
export function WithdrawForm({ shop, number, issue }: { shop: string; number: string; issue?: string }) {
  const queries = useQueryClient();
  const taking = useMutation({
    mutationFn: (asked: Record<string, unknown>) => withdraw(shop, number, asked),
    onSuccess: () => queries.invalidateQueries(),
  });
  const what = issue ? `${number} issue ${issue}` : number;
  return (
    <section className="sheet no-print" aria-labelledby="withdraw">
      <details className="form">
        <summary id="withdraw">Withdraw {what}</summary>
        <form
          onSubmit={(e) => {
            e.preventDefault();
            const v = valuesOf(e.currentTarget);
            taking.mutate(
              given({
                issue: issue ? Number(issue) : undefined,
                because: v.text('because'),
                by: v.text('by'),
                on: v.text('on'),
              }),
            );
          }}
        >
          <p className="soft">
            From that day no standing rests on {issue ? 'this issue' : 'any of its issues'}. All of it stays in the
            history.
          </p>
          <div className="fields">
            <Input label="Withdrawn by" name="by" required />
            <Input label="From" name="on" type="date" required value={today()} />
            <Field label="Reason" whole>
              {(ids) => <textarea {...ids} name="because" rows={2} required maxLength={2000} />}
            </Field>
          </div>
          <ErrorNotice error={taking.error} />
          <div className="actions">
            <BusyButton busy={taking.isPending}>{taking.isPending ? 'Withdrawing ...' : `Withdraw ${what}`}</BusyButton>
            <span role="status">{taking.isSuccess ? 'Withdrawn: the page above says from when.' : ''}</span>
          </div>
        </form>
      </details>
    </section>
  );
}
