import { type ReactNode, useCallback, useMemo, useReducer, useState } from 'react';
import type { Scene, Sheet } from '../../../sheets/model.ts';
import type { BasisWord } from '../../api/kept-at.ts';
import { Answer } from '../answer.tsx';
import { FormContext } from '../write/context.tsx';
import type { Table } from '../write/json.ts';
import { keyOf } from '../write/keep.ts';
import { KeptLine } from '../write/kept-line.tsx';
import { PasteDocument } from '../write/paste-document.tsx';
import { ProblemList } from '../write/problem-list.tsx';
import { begin, write } from '../write/reducer.ts';
import { UnitsChooser } from '../write/units-chooser.tsx';
import { useKept } from '../write/use-kept.ts';
import { KeepBasis } from './keep-basis.tsx';
import { useLive } from './live.ts';
import { LiveAnswer, NotAnswering, WholeAnswer } from './live-answer.tsx';
import { OtherUnits } from './other-units.tsx';
import { BasisPictureContext } from './picture.ts';
import type { BasisStart } from './start-from.ts';
import { stateOf } from './state.ts';
import { refuseOther, WORD_NAMES } from './words.ts';

const asItIs = (draft: Table): Table => draft;
const firstPicture = (sheet: Sheet | null): Scene | null =>
  sheet?.blocks.find((b) => b.block === 'picture')?.scene ?? null;

/** A document that a shop keeps, in its form: fields, what is still to do, the answer beside it; then keeping it. */
export function BasisWriter({
  shop,
  word,
  name,
  start,
  inWords,
  complete = asItIs,
  children,
}: {
  shop: string;
  word: BasisWord;
  /** Under what this browser keeps the draft: the name of the kept document, or `new`. */
  name: string;
  start: BasisStart;
  inWords: (path: string) => string;
  /** Fills in what follows from the rest, before it is asked about and kept. */
  complete?: (draft: Table) => Table;
  children: ReactNode;
}) {
  const [{ draft, past }, send] = useReducer(write, start, (s) =>
    s.opened ? write(begin(s.draft), { does: 'open', draft: s.opened }) : begin(s.draft),
  );
  const [over, setOver] = useState(start.over);
  const [touched, setTouched] = useState<ReadonlySet<string>>(new Set());
  const touch = useCallback((place: string) => setTouched((t) => (t.has(place) ? t : new Set([...t, place]))), []);
  const whole = useMemo(() => complete(draft), [complete, draft]);
  const live = useLive(shop, word, whole, over ? name : null);
  const kept = useKept(keyOf(word, shop, name), draft, start.draft, over?.entry ?? null);
  const state = stateOf(WORD_NAMES[word].this, live);
  const { problems } = live;
  const form = useMemo(() => ({ draft, send, problems, touched, touch }), [draft, problems, touched, touch]);
  const picture: Scene | null = live.checked?.picture ?? firstPicture(live.sheet);
  return (
    <FormContext value={form}>
      <BasisPictureContext value={picture}>
        <Answer answer={state.answer} because={start.note} />
        <KeptLine
          kept={kept}
          send={send}
          otherwise="keep the document"
          file={{ document: draft, name: `${word}-draft` }}
        />
        <NotAnswering failed={live.failed} again={live.again} />
        <PasteDocument what={WORD_NAMES[word].one} send={send} refuse={(given) => refuseOther(word, given)} />
        <div className="writing basis">
          <form className="form-column" aria-label={WORD_NAMES[word].the} onSubmit={(e) => e.preventDefault()}>
            <div className="picture-head">
              <UnitsChooser />
              <button
                type="button"
                className="quiet"
                disabled={past.length === 0}
                onClick={() => send({ does: 'undo' })}
              >
                Undo the last change
              </button>
            </div>
            <OtherUnits />
            {children}
          </form>
          <aside className="sheet read-column" aria-label="Its answer">
            <ProblemList problems={problems} touch={touch} inWords={inWords} />
            <LiveAnswer live={live} />
          </aside>
        </div>
        <WholeAnswer sheet={live.sheet} />
        <KeepBasis
          shop={shop}
          word={word}
          draft={whole}
          over={over}
          ready={state.ready}
          because={state.because}
          kept={kept.forget}
          take={(document, from) => {
            send({ does: 'open', draft: document });
            setOver(from);
          }}
        />
      </BasisPictureContext>
    </FormContext>
  );
}
