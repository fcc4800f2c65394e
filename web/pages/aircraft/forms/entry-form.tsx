import { type ReactNode, useState } from 'react';
import { type NewEntry, useWriteEntries } from '../../../api/entries.ts';
import { ErrorNotice } from '../../../parts/error-notice.tsx';
import { type Values, valuesOf } from './read.ts';

/** A folded form that writes entries to the log. Nothing is overwritten: a correction is a further entry. */
export function EntryForm({
  shop,
  title,
  button,
  entries,
  done,
  children,
}: {
  shop: string;
  title: string;
  button: string;
  entries: (values: Values) => readonly NewEntry[] | Promise<readonly NewEntry[]>;
  /** When it was written, for a form that keeps what it chose. */
  done?: () => void;
  children: ReactNode;
}) {
  const [said, setSaid] = useState('');
  const [failed, setFailed] = useState<unknown>(null);
  const write = useWriteEntries(shop, () =>
    setSaid(
      'Written to the log. The answer above is computed anew; what does not fit stands under Found in the papers.',
    ),
  );
  const send = async (form: HTMLFormElement) => {
    setSaid('');
    setFailed(null);
    try {
      await write.mutateAsync(await entries(valuesOf(form)));
      form.reset();
      done?.();
    } catch (e) {
      setFailed(e);
    }
  };
  return (
    <details className="form">
      <summary>{title}</summary>
      <form
        onChange={() => {
          setSaid('');
          setFailed(null);
        }}
        onSubmit={(e) => {
          e.preventDefault();
          void send(e.currentTarget);
        }}
      >
        <div className="fields">{children}</div>
        <ErrorNotice error={failed} />
        <div className="actions">
          <button type="submit" className="first" disabled={write.isPending}>
            {write.isPending ? 'Writing ...' : button}
          </button>
          <span role="status">{said}</span>
        </div>
      </form>
    </details>
  );
}
