import { useEffect, useRef } from 'react';
import { Answer } from '../../parts/answer.tsx';
import { BusyButton } from '../../parts/busy-button.tsx';
import { ErrorNotice } from '../../parts/error-notice.tsx';
import { Blocks } from '../../parts/sheet-view.tsx';
import type { Meanwhile, Writing } from './use-writing.ts';

/** What the entries would change, before they are written; then the writing itself. */
export function BeforeAfter({ writing, said }: { writing: Writing; said: string }) {
  const { preview, failed, meanwhile, busy } = writing;
  const place = useRef<HTMLDivElement>(null);
  const shown = preview !== null;
  // The button that was pressed goes with its section: the focus stays where it was.
  useEffect(() => {
    if (!shown && said && document.activeElement === document.body) place.current?.focus();
  }, [shown, said]);
  return (
    <div ref={place} tabIndex={-1} className="answered" aria-live="polite">
      {busy === 'reading' ? <p role="status">Working out before and after ...</p> : null}
      {preview ? (
        <section className="before-after fades" aria-label="Before and after">
          <Answer answer={preview.sheet.answer} because={preview.sheet.because} level={2} />
          <Blocks blocks={preview.sheet.blocks} />
          <div className="actions">
            <BusyButton type="button" className="first" busy={busy !== ''} onClick={() => void writing.write()}>
              {busy === 'writing' ? 'Writing ...' : writeWords(preview.entries.length)}
            </BusyButton>
            <button
              type="button"
              onClick={() => {
                place.current?.focus();
                writing.reset();
              }}
            >
              Change something first
            </button>
          </div>
        </section>
      ) : null}
      {meanwhile ? <CameFirst meanwhile={meanwhile} /> : <ErrorNotice error={failed} />}
      {said ? <p role="status">{said}</p> : null}
    </div>
  );
}
const writeWords = (n: number): string => (n === 1 ? 'Write this entry' : `Write these ${n} entries`);

/** Somebody else wrote first: what they wrote stands here, and what was typed stays in its fields. */
export function CameFirst({ meanwhile }: { meanwhile: Meanwhile }) {
  const rows = meanwhile.sheet.rows.filter((r) => meanwhile.numbers.includes(r.number));
  return (
    <div className="notice" role="alert">
      <p>
        <strong>
          Somebody wrote to this aircraft in the meantime. Nothing of yours was written, and nothing is lost.
        </strong>
      </p>
      <ul>
        {rows.map((r) => (
          <li key={r.number}>
            Entry {r.number}, {r.recorded}: {r.dayWords}, {r.kindWords}: {r.says}
            {r.replaces ? ` (stands in place of entry ${r.replaces})` : ''}
          </li>
        ))}
      </ul>
      <p>Look at it, then show before and after again.</p>
    </div>
  );
}
