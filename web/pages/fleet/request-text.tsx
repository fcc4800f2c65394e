import { useRef, useState } from 'react';
import { useKeepRequest } from '../../api/fleet.ts';
import { BusyButton } from '../../parts/busy-button.tsx';
import { ErrorNotice } from '../../parts/error-notice.tsx';
import { Field, Input } from '../../parts/field.tsx';
import type { WantedRowProps } from './wanted-row-props.ts';

/** What to write to the owner: to be changed, copied, and kept as asked. */
export function RequestText({
  shop,
  row,
  name,
  words,
  by,
  setBy,
  tell,
  done,
}: WantedRowProps & { name: string; words: string; done: () => void }) {
  const [text, setText] = useState(words);
  const [copied, setCopied] = useState('');
  const box = useRef<HTMLTextAreaElement>(null);
  const keep = useKeepRequest(shop);
  const copy = async () => {
    box.current?.select();
    try {
      await navigator.clipboard.writeText(text);
      setCopied('Copied.');
    } catch {
      setCopied('The browser does not let this page copy: the text is selected, copy it with Ctrl+C.');
    }
  };
  const send = async () => {
    await keep.mutateAsync({ requests: [{ aircraft: row.id, words: text }], by });
    done();
    tell(`Kept: the owner of ${name} was asked by ${by}.`);
  };
  return (
    <form
      onSubmit={(e) => {
        e.preventDefault();
        void send().catch(() => undefined);
      }}
    >
      <Field label={`Request to the owner of ${name}`} whole>
        {(ids) => (
          <textarea
            {...ids}
            ref={box}
            rows={14}
            maxLength={4000}
            required
            value={text}
            onChange={(e) => setText(e.target.value)}
          />
        )}
      </Field>
      <div className="row">
        <button type="button" onClick={() => void copy()}>
          Copy
        </button>
        <Input label="Asked by" name="by" required value={by} set={setBy} />
        <BusyButton className="first" busy={keep.isPending}>
          {keep.isPending ? 'Keeping ...' : 'Keep as asked'}
        </BusyButton>
      </div>
      <p className="hint" role="status">
        {copied}
      </p>
      <ErrorNotice error={keep.error} />
    </form>
  );
}
