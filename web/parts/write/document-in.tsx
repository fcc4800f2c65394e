import { useState } from 'react';
import { ErrorNotice } from '../error-notice.tsx';
import { Field } from '../field.tsx';
import type { Json, Table } from './json.ts';
import { readText } from './read-text.ts';

/** Beyond this the server takes no document either. */
const LARGEST = 20 * 1024 * 1024;

/** A whole document, dropped, chosen or pasted. */
export function DocumentIn({
  what,
  button,
  take,
  refuse,
}: {
  /** What the document is called: directive. */
  what: string;
  button: string;
  take: (document: Json) => void;
  /** Throws, in words, where the text is another document. */
  refuse?: (given: Table) => void;
}) {
  const [text, setText] = useState('');
  const [failed, setFailed] = useState<unknown>(null);
  const [over, setOver] = useState(false);
  const read = async (given: string) => {
    setFailed(null);
    try {
      take(await readText(given, what, refuse));
      setText('');
    } catch (e) {
      setFailed(e);
    }
  };
  const file = async (f: File | undefined) => {
    if (!f) return;
    if (f.size > LARGEST) setFailed(new Error(`"${f.name}" is too large for one ${what}. Choose its document alone.`));
    else await read(await f.text());
  };
  return (
    <>
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
        <Field label={`Drop a ${what} here, or choose its file`}>
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
        <button type="button" disabled={text.trim() === ''} onClick={() => void read(text)}>
          {button}
        </button>
      </div>
    </>
  );
}
