import { memo } from 'react';
import type { Block, Sheet } from '../../../sheets/model.ts';
import { ServerGone } from '../../api/client.ts';
import { Answer } from '../answer.tsx';
import { Caution, Warnings } from '../caution.tsx';
import { ErrorNotice } from '../error-notice.tsx';
import { BlockView, SheetView } from '../sheet-view.tsx';
import type { Live } from './live.ts';

/** What fits beside a form: short tables, pairs, findings. */
const fits = (b: Block): boolean =>
  b.block === 'key-value' ||
  (b.block === 'findings' && b.findings.length > 0) ||
  (b.block === 'table' && b.columns.length <= 3 && b.rows.length <= 12);

/** The answer beside the form, while the form is filled in. */
export function LiveAnswer({ live }: { live: Pick<Live, 'sheet' | 'old' | 'computing' | 'refused'> }) {
  const { sheet, old, computing, refused } = live;
  if (!sheet)
    return (
      <>
        <h2>Its answer</h2>
        {refused ? <ErrorNotice error={refused} /> : null}
        <p className="empty" role="status">
          {computing
            ? 'Being computed ...'
            : refused
              ? ''
              : 'It stands here as soon as the fields that every document has are filled in.'}
        </p>
      </>
    );
  return (
    <div aria-busy={computing}>
      <p className="soft" role="status">
        {computing
          ? 'Being computed anew ...'
          : old
            ? 'As it stood before: what is written now has no answer yet.'
            : ''}
      </p>
      {refused ? <ErrorNotice error={refused} /> : null}
      <Answer answer={sheet.answer} because={sheet.because} level={2} />
      <Warnings warnings={sheet.warnings} />
      {sheet.blocks.filter(fits).map((b, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: two blocks may bear one title; their order is the sheet's
        <section className="live-block" key={`${b.title} ${i}`}>
          <BlockView block={b} />
        </section>
      ))}
      <Caution text={sheet.caution} />
    </div>
  );
}

/** The same answer as the page that will be kept, below the form. */
export const WholeAnswer = memo(function WholeAnswer({ sheet }: { sheet: Sheet | null }) {
  if (!sheet) return null;
  return (
    <details className="form whole-answer">
      <summary>The whole answer, with its pictures and tables</summary>
      <SheetView sheet={sheet} level={2} />
    </details>
  );
});

/** The program does not answer, or failed: what is typed stays. */
export function NotAnswering({ failed, again }: { failed: unknown; again: () => void }) {
  if (!(failed instanceof ServerGone)) return <ErrorNotice error={failed} again={again} />;
  return (
    <div className="notice" role="alert">
      <p>
        <strong>Sparwright does not answer, so nothing is checked at the moment.</strong> Go on writing: this browser
        keeps every change, and the checks come back with the program.
      </p>
    </div>
  );
}
