import { useQuery } from '@tanstack/react-query';
import { type ReactNode, useState } from 'react';
import { type BasisWord, standingBasis } from '../../api/usage.ts';
import { Loaded } from '../loading.tsx';
import { handedOver } from '../write/hand-over.ts';
import type { Json, Table } from '../write/json.ts';
import { type Kept, keptIn, keyOf } from '../write/keep.ts';
import { type BasisStart, basisStart } from './start-from.ts';
import { WORD_NAMES } from './words.ts';
import { BasisWriter } from './writer.tsx';

interface Props {
  readonly shop: string;
  readonly word: BasisWord;
  /** The kept document that is written over; null for a new one. */
  readonly name: string | null;
  readonly empty: () => Table;
  readonly inWords: (path: string) => string;
  /** Under what a new one is kept in this browser, where several may be begun. */
  readonly draftName?: string;
  /** Fills in what follows from the rest, before it is asked about and kept. */
  readonly complete?: (draft: Table) => Table;
  readonly children: ReactNode;
}
/** What this browser kept; a browser that keeps nothing has nothing. */
function keptHere(key: string): Kept | null {
  try {
    return keptIn(localStorage, key);
  } catch {
    return null;
  }
}

/** Opens the form: from this browser's copy, the kept document, a document that was handed over, or nothing. */
export function OpenWriter({ shop, word, name, empty, inWords, draftName = 'new', complete, children }: Props) {
  const [kept] = useState(() => keptHere(keyOf(word, shop, name ?? draftName)));
  const [opened] = useState(() => (name === null ? handedOver(word) : null));
  const [blank] = useState(empty);
  const standing = useQuery({
    queryKey: ['basis to write', shop, word, name],
    queryFn: async () => {
      if (name === null) return null;
      const { document, entry } = await standingBasis(shop, word, name);
      return { document: document as Json, entry };
    },
    staleTime: Number.POSITIVE_INFINITY,
    gcTime: 0,
  });
  return (
    <Loaded query={standing} what="Reading the document that is kept">
      {(s) => (
        <Opened
          shop={shop}
          word={word}
          name={name}
          inWords={inWords}
          draftName={draftName}
          {...(complete ? { complete } : {})}
          start={() => basisStart({ kept, standing: s, opened, empty: blank, begin: WORD_NAMES[word].begin })}
        >
          {children}
        </Opened>
      )}
    </Loaded>
  );
}

function Opened({ start: make, name, draftName = 'new', ...rest }: Omit<Props, 'empty'> & { start: () => BasisStart }) {
  const [start] = useState(make);
  return <BasisWriter {...rest} name={name ?? draftName} start={start} />;
}
