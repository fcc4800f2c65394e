import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { adoptedDocument, checkDraft, serverDraft, useWords, type Words } from '../../../api/directives.ts';
import { today } from '../../../api/today.ts';
import { Loaded } from '../../../parts/loading.tsx';
import { Page } from '../../../parts/page.tsx';
import { handedOver } from '../../../parts/write/hand-over.ts';
import type { Json } from '../../../parts/write/json.ts';
import { type Kept, keptIn, keyOf } from '../../../parts/write/keep.ts';
import { draftOf } from './draft.ts';
import { type Sources, startFrom } from './start-from.ts';
import { WriterView } from './writer.tsx';

/** A new rule: from nothing, as this browser kept it, or from a document that was dropped elsewhere. */
export function NewDirectivePage({ shop }: { shop: string }) {
  const words = useWords(shop);
  const [{ start, note }] = useState(() => {
    const kept = keptIn(localStorage, keyOf('directive', shop, 'new'));
    const opened = handedOver('directive');
    const { start, note } = startFrom({ kept, server: null, adopted: null, number: '', day: today() });
    if (!opened) return { start, note };
    return {
      start: { ...start, opened: draftOf(opened) },
      note: 'The form holds the document that you gave. Look it over.',
    };
  });
  return (
    <Page shop={shop} title="Write a directive">
      <Loaded query={words} what="Reading the words of this shop">
        {(w) => <WriterView shop={shop} name="new" start={start} note={note} words={w} inForce={null} />}
      </Loaded>
    </Page>
  );
}

/** The next issue of a rule, or a draft that was kept. */
export function WriteDirectivePage({ shop, number }: { shop: string; number: string }) {
  const words = useWords(shop);
  return (
    <Page shop={shop} title={`Write ${number}`}>
      <Loaded query={words} what="Reading the words of this shop">
        {(w) => <Writing shop={shop} number={number} words={w} />}
      </Loaded>
    </Page>
  );
}

function Writing({ shop, number, words }: { shop: string; number: string; words: Words }) {
  const [kept] = useState(() => keptIn(localStorage, keyOf('directive', shop, number)));
  const adopted = words.directives.some((d) => d.number === number);
  const sources = useQuery({
    queryKey: ['directive to write', shop, number],
    queryFn: () => sourcesOf(shop, number, kept, adopted),
    staleTime: Number.POSITIVE_INFINITY,
    gcTime: 0,
  });
  return (
    <Loaded query={sources} what="Reading the issue in force">
      {(s) => {
        const { start, note } = startFrom(s);
        return <WriterView shop={shop} name={number} start={start} note={note} words={words} inForce={s.inForce} />;
      }}
    </Loaded>
  );
}

async function sourcesOf(shop: string, number: string, kept: Kept | null, known: boolean) {
  const [server, adopted] = await Promise.all([
    serverDraft(shop, number),
    known ? adoptedDocument(shop, number) : Promise.resolve(null),
  ]);
  const said = adopted && (await checkDraft(shop, adopted)).readBack;
  const sources: Sources = { kept, server, adopted: adopted as Json | null, number, day: today() };
  return { ...sources, inForce: adopted && said ? { name: `issue ${String(adopted.issue)}`, said } : null };
}
