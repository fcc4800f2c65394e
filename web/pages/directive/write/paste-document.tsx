import { useState } from 'react';
import { ErrorNotice } from '../../../parts/error-notice.tsx';
import { Field } from '../../../parts/field.tsx';
import { draftOf } from './draft.ts';
import { readText } from './read-text.ts';
import type { Change } from './reducer.ts';

/** Another way in: a whole document, pasted or dropped, fills the form. */
export function PasteDocument({ send }: { send: (c: Change) => void }) {
  const [text, setText] = useState('');
  const [said, setSaid] = useState('');
  const [failed, setFailed] = useState<unknown>(null);
  const [over, setOver] = useState(false);
  const fill = async (given: string) => {
    setSaid('');
    setFailed(null);
    try {
      send({ does: 'open', draft: draftOf(await readText(given)) });
      setText('');
      setSaid('The form holds the document now. The last change can be undone.');
    } catch (e) {
      setFailed(e);
    }
  };
  const file = async (f: File | undefined) => {
    if (!f) return;
    if (f.size > 2_000_000)
      setFailed(new Error(`"${f.name}" is too large for one directive. Choose its document alone.`));
    else await fill(await f.text());
  };
  return (
    <details className="sheet form">
      <summary>Paste or drop a document instead</summary>
      <section
        className={over ? 'drop over' : 'drop'}
        aria-label="Drop a document"
        onDragOver={(e) => {
          e.preventDefault();
          setOver(true);
        }}
        onDragLeave={() => setOver(false)}
        onDrop={(e) => {
          e.preventDefault();
          setOver(false);
          void file(e.dataTransfer.files[0]);
        }}
      >
        <Field label="Drop a directive here, or choose its file" hint="One document, as this program exports it">
          {(ids) => (
            <input
              {...ids}
              type="file"
              accept=".yaml,.yml,.json"
              onChange={(e) => {
                void file(e.target.files?.[0]);
                e.target.value = '';
              }}
            />
          )}
        </Field>
      </section>
      <Field label="Or paste the document" whole>
        {(ids) => (
          <textarea
            {...ids}
            className="document"
            spellCheck={false}
            value={text}
            onChange={(e) => setText(e.target.value)}
          />
        )}
      </Field>
      <ErrorNotice error={failed} />
      <div className="actions">
        <button type="button" disabled={text.trim() === ''} onClick={() => void fill(text)}>
          Fill the form with it
        </button>
        <span role="status">{said}</span>
      </div>
    </details>
  );
}
