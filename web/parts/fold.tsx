import { useState } from 'react';
import type { Fold } from '../../sheets/model.ts';

/** The row or card that the address points at; empty where it points at none, and where a page is drawn without one. */
function pointedAt(): string {
  try {
    return decodeURIComponent(window.location.hash.slice(1));
  } catch {
    return '';
  }
}
/** Which folds stand open: as the sheet says, until a reader turns one; the one that the address points into too. */
export function useFolds(folds: readonly Fold[], ids: readonly string[]) {
  const [turned, setTurned] = useState<Readonly<Record<string, boolean>>>({});
  const [there] = useState(pointedAt);
  let from = 0;
  return folds.map((fold, i) => {
    const [begin, end] = [from, from + fold.count];
    from = end;
    const key = `${fold.title} ${i}`;
    const open = turned[key] ?? (fold.open || (there !== '' && ids.slice(begin, end).includes(there)));
    return { fold, key, begin, end, open, turn: () => setTurned((t) => ({ ...t, [key]: !open })) };
  });
}
/** What is folded, how much of it there is, and the key that unfolds it. */
export function FoldButton({
  fold,
  open,
  controls,
  turn,
}: {
  fold: Fold;
  open: boolean;
  controls: string;
  turn: () => void;
}) {
  return (
    <button type="button" className="fold" aria-expanded={open} aria-controls={controls} onClick={turn}>
      <span className="fold-title">{fold.title}</span> <span className="soft">{fold.note}</span>
    </button>
  );
}
