import type { Letter, Sheet } from '../../../sheets/index.ts';
import { Answer } from '../../parts/answer.tsx';
import { Caution, Warnings } from '../../parts/caution.tsx';
import { Blocks } from '../../parts/sheet-view.tsx';
import { TitleBlock } from '../../parts/title-block.tsx';

/** The letter as it will lie on paper: title block at the foot. */
export function LetterView({ sheet }: { sheet: Sheet & Partial<Pick<Letter, 'sender'>> }) {
  return (
    <article className="letter">
      <div className="letter-head">
        <div>
          <strong>{sheet.title}</strong>
          <div className="soft">{sheet.sender?.join(', ')}</div>
        </div>
        <span className="soft">{sheet.subject}</span>
      </div>
      <Answer answer={sheet.answer} because={sheet.because} />
      <Blocks blocks={sheet.blocks} />
      <Warnings warnings={sheet.warnings} />
      <Caution text={sheet.caution} />
      <TitleBlock block={sheet.titleBlock} number={sheet.number} />
    </article>
  );
}
