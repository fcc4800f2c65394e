import { useState } from 'react';
import { DocumentIn } from '../../../parts/write/document-in.tsx';
import { draftOf } from './draft.ts';
import { refuseQuestion } from './read-rule.ts';
import type { Change } from './reducer.ts';

/** Another way in: a whole document fills the form. */
export function PasteDocument({ send }: { send: (c: Change) => void }) {
  const [said, setSaid] = useState('');
  return (
    <details className="form paste">
      <summary>Paste or drop a document instead</summary>
      <DocumentIn
        what="directive"
        refuse={refuseQuestion}
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
