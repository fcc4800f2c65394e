import { useId, useRef, useState } from 'react';
import { flushSync } from 'react-dom';
import { useField } from '../../../parts/write/context.tsx';
import { type Path, textOf } from '../../../parts/write/json.ts';
import { Placed } from '../../../parts/write/placed.tsx';
import { useWriter } from './context.tsx';
import { complete, type FactName, fitting, wordAt } from './facts.ts';
import { ValueNow } from './value-now.tsx';

/**
 * Where arithmetic is typed: names of facts are completed at the caret (arrows choose, Enter or Tab takes, Escape
 * closes), the place of an error is shown below, and the value for the chosen aircraft beside it.
 */
export function ExpressionIn({
  path,
  label,
  is,
  part,
  unit,
  hint,
}: {
  path: Path;
  label: string;
  is: 'number' | 'condition';
  part: string;
  unit?: string | undefined;
  hint?: string;
}) {
  const f = useField(path);
  const { facts } = useWriter();
  const field = useRef<HTMLTextAreaElement>(null);
  const list = useId();
  const [offer, setOffer] = useState<readonly FactName[]>([]);
  const [chosen, setChosen] = useState(0);
  const text = textOf(f.value);
  /** Where the caret stood when names were offered: gone from there, they fit another word no longer. */
  const offeredAt = useRef(0);
  const look = (value: string, caret: number) => {
    offeredAt.current = caret;
    const { typed } = wordAt(value, caret);
    const found = fitting(facts, typed);
    setOffer(found.length === 1 && found[0]?.name === typed ? [] : found);
    setChosen(0);
  };
  const take = (name: string) => {
    const typed = field.current;
    if (!typed) return;
    const done = complete(typed.value, typed.selectionStart, name);
    // At once: a caret that is set later jumps back under a fast hand.
    flushSync(() => {
      f.put(done.text);
      setOffer([]);
    });
    typed.focus();
    typed.setSelectionRange(done.caret, done.caret);
  };
  const key = (e: React.KeyboardEvent) => {
    if (offer.length === 0) return;
    const step = e.key === 'ArrowDown' ? 1 : e.key === 'ArrowUp' ? -1 : 0;
    if (step) setChosen((chosen + step + offer.length) % offer.length);
    else if (e.key === 'Enter' || (e.key === 'Tab' && !e.shiftKey)) take(offer[chosen]!.name);
    else if (e.key === 'Escape') setOffer([]);
    else return;
    e.preventDefault();
  };
  return (
    <div className="expression whole">
      <Placed place={f.place} label={label} problems={f.problems} hint={hint} whole>
        {(ids) => (
          <div className="completes">
            <textarea
              {...ids}
              ref={field}
              className="document"
              rows={2}
              maxLength={2000}
              spellCheck={false}
              autoCapitalize="off"
              aria-autocomplete="list"
              aria-haspopup="listbox"
              aria-controls={list}
              aria-activedescendant={offer.length ? `${list}-${chosen}` : undefined}
              value={text}
              onChange={(e) => {
                f.put(e.target.value === '' ? undefined : e.target.value);
                look(e.target.value, e.target.selectionStart);
              }}
              onKeyDown={key}
              onSelect={(e) => {
                if (e.currentTarget.selectionStart !== offeredAt.current) setOffer([]);
              }}
              onBlur={() => {
                setOffer([]);
                f.leave();
              }}
            />
            <Offer id={list} offer={offer} chosen={chosen} take={take} />
          </div>
        )}
      </Placed>
      <ErrorPlace text={text} position={f.problems.find((p) => p.position)?.position} />
      <p className="hidden-text" role="status">
        {offer.length ? `${offer.length} names fit. ${offer[chosen]?.name}: ${offer[chosen]?.meaning}` : ''}
      </p>
      <ValueNow text={text} is={is} part={part} unit={unit} />
    </div>
  );
}

function Offer({
  id,
  offer,
  chosen,
  take,
}: {
  id: string;
  offer: readonly FactName[];
  chosen: number;
  take: (name: string) => void;
}) {
  return (
    <div role="listbox" id={id} aria-label="Names of facts" className="offer" hidden={offer.length === 0}>
      {offer.map((f, i) => (
        // biome-ignore lint/a11y/useFocusableInteractive: the caret stays in the text; the chosen name is told by aria-activedescendant
        // biome-ignore lint/a11y/useKeyWithClickEvents: the keys are those of the text
        <div
          role="option"
          key={f.name}
          id={`${id}-${i}`}
          aria-selected={i === chosen}
          onMouseDown={(e) => e.preventDefault()}
          onClick={() => take(f.name)}
        >
          <code>{f.name}</code> <small>{f.meaning}</small>
        </div>
      ))}
    </div>
  );
}

/** The text again with a mark under the place where it stops being read. */
export function ErrorPlace({ text, position }: { text: string; position: number | undefined }) {
  if (position === undefined || text === '') return null;
  const start = Math.max(0, position - 40);
  const line = text.replaceAll(/\s/g, ' ').slice(start, position + 24);
  return (
    <pre className="error-place" aria-hidden="true">
      {line}
      {'\n'}
      {' '.repeat(position - 1 - start)}^ here
    </pre>
  );
}
