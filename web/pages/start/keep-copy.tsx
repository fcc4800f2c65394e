import { useMutation, useQueryClient } from '@tanstack/react-query';
import { useRef, useState } from 'react';
import { postFile } from '../../api/client.ts';
import type { Shop } from '../../api/shops.ts';
import { today } from '../../api/today.ts';
import { ErrorNotice } from '../../parts/error-notice.tsx';
import { Progress } from '../import/progress.tsx';

/** A copy of everything as one file; where nothing is recorded yet, the way back. */
export function KeepCopy({ shops }: { shops: readonly Shop[] }) {
  const filled = shops.filter((s) => s.entries > 0);
  return (
    <section className="sheet" aria-labelledby="keep-copy">
      <h2 id="keep-copy">{filled.length > 0 ? 'Keep a copy' : 'A copy is here'}</h2>
      {filled.length > 0 ? <Keep shops={filled} /> : <BringBack />}
    </section>
  );
}

function Keep({ shops }: { shops: readonly Shop[] }) {
  const [said, setSaid] = useState('');
  return (
    <>
      <p>
        One file holds every entry, letter and scan of {shops.map((s) => s.name).join(' and ')}. Keep it on another
        disk, away from this machine. Work may go on meanwhile.
      </p>
      <a className="button" href="/api/backup" download onClick={() => setSaid(keptWords(shops, today()))}>
        Keep a copy
      </a>
      <p role="status">{said}</p>
    </>
  );
}

/** What goes to the browser: the file by its name, and how much is in it. */
export const keptWords = (shops: readonly Shop[], day: string): string => {
  const of = shops.map((s) => `${count(s.entries)} of ${s.name}`).join(' and ');
  return `Handed to the browser: sparwright-${day}.jsonl.gz, with ${of}. It lies with your downloads; the browser says if it was cut short.`;
};
const count = (n: number): string =>
  `${n.toLocaleString('en').replaceAll(',', '\u202f')} ${n === 1 ? 'entry' : 'entries'}`;

interface Restored {
  readonly made_at: string;
  readonly shops: readonly { readonly name: string }[];
}

function BringBack() {
  const input = useRef<HTMLInputElement>(null);
  const queries = useQueryClient();
  const [sent, setSent] = useState<number | null>(0);
  const bring = useMutation({
    mutationFn: (file: File) => postFile<Restored>('/api/restore', file, setSent),
    onSuccess: () => queries.invalidateQueries(),
  });
  return (
    <>
      <p>Nothing is recorded here yet. A copy that Sparwright made comes back whole and proved, or not at all.</p>
      <ErrorNotice error={bring.error} />
      {bring.isPending ? <Progress part={sent} what="Bringing the copy back" /> : null}
      <input
        ref={input}
        type="file"
        className="hidden-text"
        tabIndex={-1}
        aria-label="Copy to bring back"
        accept=".gz"
        onChange={(e) => {
          const file = e.target.files?.[0];
          if (file) bring.mutate(file);
          e.target.value = '';
        }}
      />
      <button type="button" disabled={bring.isPending} onClick={() => input.current?.click()}>
        Bring a copy back
      </button>
    </>
  );
}
