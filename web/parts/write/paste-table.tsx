import { useEffect, useMemo, useRef, useState } from 'react';
import { Field } from '../field.tsx';
import { shownFigure } from './figures.ts';
import { type Decimal, type Pasted, readPasted } from './pasted.ts';

/** Columns that a table may have, in the order in which they are pasted. */
export interface Columns {
  readonly names: readonly string[];
  /** What is told of them to the person who pastes. */
  readonly say: string;
}

const many = (n: number) => (n === 1 ? '1 row' : `${shownFigure(n)} rows`);
/** A text longer than this is read aside: a field of so many lines holds the page up. */
const LONG = 100_000;

/** A table from a spreadsheet: pasted, read back in a sentence, then taken. */
export function PasteTable({
  label,
  forms,
  take,
  begin = '',
}: {
  label: string;
  /** One or more forms, told apart by their number of columns. */
  forms: readonly Columns[];
  take: (rows: readonly (readonly number[])[]) => void;
  /** What stands in it at first. */
  begin?: string;
}) {
  const [text, setText] = useState(begin);
  const [decimal, setDecimal] = useState<Decimal | undefined>();
  const [done, setDone] = useState('');
  const box = useRef<HTMLDivElement>(null);
  const long = useAside();
  const source = long.text ?? text;
  const read = useMemo(() => (source.trim() === '' ? null : readPasted(source, decimal)), [source, decimal]);
  const type = (typed: string) => {
    setDone('');
    const aside = typed.length > LONG;
    setText(aside ? '' : typed);
    if (aside) long.give(typed);
    else long.drop();
  };
  const width = read?.rows[0]?.length ?? 0;
  const form = forms.find((f) => f.names.length === width);
  const wants = forms.map((f) => f.say).join(' Or ');
  return (
    <div className="paste-table whole" ref={box}>
      <Field label={label} hint={`${wants} Tabs, semicolons, commas or blanks between the columns.`} whole>
        {(ids) => (
          <textarea
            {...ids}
            rows={3}
            className="document short"
            spellCheck={false}
            value={text}
            onPaste={(e) => {
              const pasted = e.clipboardData.getData('text/plain');
              if (text !== '' || pasted.length <= LONG) return;
              e.preventDefault();
              type(pasted);
            }}
            onChange={(e) => type(e.target.value)}
          />
        )}
      </Field>
      {read?.ask || decimal !== undefined ? <AskDecimal decimal={decimal} set={setDecimal} /> : null}
      <p role="status" className={read && (!form || read.wrong.length) ? 'wrong' : 'soft'}>
        {long.rows ? `Reading ${many(long.rows)} ...` : read ? said(read, form, wants) : done}
      </p>
      {read && form && !read.ask ? (
        <button
          type="button"
          onClick={() => {
            take(read.rows);
            setText('');
            long.drop();
            setDecimal(undefined);
            setDone(`${many(read.rows.length)} taken.`);
            box.current?.querySelector('textarea')?.focus();
          }}
        >
          Take {many(read.rows.length)}
        </button>
      ) : null}
      {long.text !== null ? (
        <button type="button" className="quiet" onClick={long.drop}>
          Leave them
        </button>
      ) : null}
    </div>
  );
}

/** A long text that was pasted: said first, so that the page shows it, then read. */
function useAside() {
  const [waits, setWaits] = useState<string | null>(null);
  const [text, setText] = useState<string | null>(null);
  useEffect(() => {
    if (waits === null) return;
    const timer = setTimeout(() => {
      setText(waits);
      setWaits(null);
    }, 50);
    return () => clearTimeout(timer);
  }, [waits]);
  const rows = useMemo(() => (waits === null ? 0 : waits.trimEnd().split('\n').length), [waits]);
  const drop = () => {
    setWaits(null);
    setText(null);
  };
  return { text, rows, give: setWaits, drop };
}

function AskDecimal({ decimal, set }: { decimal: Decimal | undefined; set: (d: Decimal) => void }) {
  return (
    <Field label="What is the comma in these figures?">
      {(ids) => (
        <select {...ids} value={decimal ?? ''} onChange={(e) => set(e.target.value as Decimal)}>
          {decimal === undefined ? <option value="">please say</option> : null}
          <option value=",">the decimal sign</option>
          <option value=".">it divides thousands or columns</option>
        </select>
      )}
    </Field>
  );
}

const shown = (row: readonly number[], names: readonly string[]) => row.map((n, i) => `${names[i]} ${n}`).join(', ');
function said(read: Pasted, form: Columns | undefined, wants: string): string {
  if (read.ask) return 'The comma may be the decimal sign or stand between thousands or columns: please say which.';
  const first = read.rows[0];
  const trouble = read.wrong
    .slice(0, 3)
    .map((w) => (w.line ? `Line ${w.line} ${w.because}: "${w.text.slice(0, 60)}".` : `${w.because}.`))
    .join(' ');
  const left = read.wrong.length > 3 ? ` And ${read.wrong.length - 3} more lines.` : '';
  if (!first) return trouble + left || `No figures in it. ${wants}`;
  if (!form) return `${first.length} columns, which no table here has. ${wants}`;
  const last = read.rows.at(-1)!;
  const sign = read.decimal === ',' ? ' The comma is read as the decimal sign.' : '';
  const heading = read.heading ? ` Read as heading: ${read.heading.join(', ')}.` : '';
  const reads = `${many(read.rows.length)}: first ${shown(first, form.names)}; last ${shown(last, form.names)}.`;
  return `${reads}${sign}${heading}${trouble ? ` ${trouble}` : ''}${left}`;
}
