import { useRef, useState } from 'react';
import type { Sheet } from '../../../sheets/model.ts';
import { Answer } from '../../parts/answer.tsx';
import { Caution, Warnings } from '../../parts/caution.tsx';
import { TitleBlock } from '../../parts/title-block.tsx';
import { Fresh } from './fresh.tsx';
import { WantedRow } from './wanted-row.tsx';

const SHOWN = 100;

export function ReadingsView({ shop, sheet, gone = false }: { shop: string; sheet: Sheet; gone?: boolean }) {
  const table = sheet.blocks.find((b) => b.block === 'table');
  const [said, setSaid] = useState('');
  const [by, setBy] = useState('');
  const [all, setAll] = useState(false);
  const status = useRef<HTMLParagraphElement>(null);
  const rows = table?.rows ?? [];
  const shown = all ? rows : rows.slice(0, SHOWN);
  // The row may be gone now: the focus goes to the sentence that says so.
  const tell = (words: string) => {
    setSaid(words);
    status.current?.focus();
  };
  return (
    <>
      <TitleBlock block={sheet.titleBlock} number={sheet.number} />
      <Answer answer={sheet.answer} because={sheet.because} />
      <Warnings warnings={sheet.warnings} />
      <Fresh sheet={sheet} gone={gone} />
      <p className={said ? 'said' : 'said hidden-text'} role="status" tabIndex={-1} ref={status}>
        {said}
      </p>
      {table ? (
        <section className="sheet" aria-labelledby="wanted">
          <h2 id="wanted">{table.title}</h2>
          {rows.length === 0 ? <p className="empty">{table.empty}</p> : null}
          <ul className="wanted">
            {shown.map((row) => (
              <WantedRow
                key={row.id}
                shop={shop}
                row={row}
                columns={table.columns}
                day={sheet.day}
                by={by}
                setBy={setBy}
                tell={tell}
              />
            ))}
          </ul>
          {shown.length < rows.length ? (
            <button type="button" onClick={() => setAll(true)}>
              Show all {rows.length} aircraft
            </button>
          ) : null}
        </section>
      ) : null}
      <Caution text={sheet.caution} />
    </>
  );
}
