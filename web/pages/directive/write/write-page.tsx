import { useState } from 'react';
import { useWords } from '../../../api/directives.ts';
import { today } from '../../../api/today.ts';
import { Loaded } from '../../../parts/loading.tsx';
import { Page } from '../../../parts/page.tsx';
import { type Draft, draftOf, emptyDraft } from './draft.ts';
import type { Json } from './json.ts';
import { keptIn, keyOf } from './keep.ts';
import { WriterView } from './writer.tsx';

/** A new rule: from nothing, or as this browser kept it. */
export function NewDirectivePage({ shop }: { shop: string }) {
  const words = useWords(shop);
  const [kept] = useState(() => keptIn(localStorage, keyOf(shop, 'new')));
  const [initial] = useState<Draft>(() => (kept ? draftOf(kept.document as Json) : emptyDraft(today())));
  return (
    <Page shop={shop} title="Write a directive">
      <Loaded query={words} what="Reading the words of this shop">
        {(w) => (
          <WriterView
            shop={shop}
            name="new"
            initial={initial}
            note={
              kept
                ? `Taken up as this browser kept it on ${new Date(kept.at).toLocaleString('en-GB')}.`
                : 'Write what the text of the authority says; the rule reads itself back beside it.'
            }
            words={w}
            inForce={null}
          />
        )}
      </Loaded>
    </Page>
  );
}
