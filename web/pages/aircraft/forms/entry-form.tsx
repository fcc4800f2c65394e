import { type ReactNode, useState } from 'react';
import { type NewEntry, useWriteEntries } from '../../../api/entries.ts';
import { BusyButton } from '../../../parts/busy-button.tsx';
import { ErrorNotice } from '../../../parts/error-notice.tsx';
import { useOnce } from '../../../parts/use-once.ts';
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
  const send = useOnce(async (form: HTMLFormElement) => {
    setSaid('');
    setFailed(null);
    try {
      await write.mutateAsync(await entries(valuesOf(form)));
      form.reset();
      done?.();
    } catch (e) {
      setFailed(e);
    }
  });
  return (
    <EntryFormView
      title={title}
      button={button}
      said={said}
      failed={failed}
      busy={write.isPending}
      change={() => {
        setSaid('');
        setFailed(null);
      }}
      send={(form) => void send(form)}
    >
      {children}
    </EntryFormView>
  );
}

/** The form as it stands: what it was told, what was refused. */
export function EntryFormView({
  title,
  button,
  said,
  failed,
  busy,
  change,
  send,
  children,
}: {
  title: string;
  button: string;
  said: string;
  failed: unknown;
  busy: boolean;
  change: () => void;
  send: (form: HTMLFormElement) => void;
  children: ReactNode;
}) {
  return (
    <details className="form">
      <summary>{title}</summary>
      <form
        onChange={change}
        onSubmit={(e) => {
          e.preventDefault();
          send(e.currentTarget);
        }}
      >
        <div className="fields">{children}</div>
        <ErrorNotice error={failed} />
        <div className="actions">
          <BusyButton className="first" busy={busy}>
            {busy ? 'Writing ...' : button}
          </BusyButton>
          <span role="status">{said}</span>
        </div>
      </form>
    </details>
  );
}
