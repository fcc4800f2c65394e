import { useState } from 'react';
import { DocumentIn } from './document-in.tsx';
import { type Json, type Table, tableOf } from './json.ts';
import type { Change } from './reducer.ts';

/** Another way in: a whole document fills the form. */
export function PasteDocument({
  what,
  send,
  draftOf = tableOf,
  refuse,
}: {
  what: string;
  send: (c: Change) => void;
  draftOf?: (document: Json) => Table;
  refuse: (given: Table) => void;
}) {
  const [said, setSaid] = useState('');
  return (
    <details className="form paste">
      <summary>Paste or drop a document instead</summary>
      <DocumentIn
        what={what}
        refuse={refuse}
        button="Fill the form with it"
        take={(document) => {
          send({ does: 'open', draft: draftOf(document) });
          setSaid('The form holds the document now. The last change can be undone.');
        }}
      />
      <p role="status">{said}</p>
    </details>
  );
}
