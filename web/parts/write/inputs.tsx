import { useId } from 'react';
import { slugOf } from '../../pages/aircraft/forms/read.ts';
import { useField, useTyped } from './context.tsx';
import { figureOf, itemsOf, shownFigure, shownWord } from './figures.ts';
import { listOf, type Path, textOf } from './json.ts';
import { Placed, type PlacedIds } from './placed.tsx';

interface Common {
  readonly path: Path;
  readonly label: string;
  readonly unit?: string | undefined;
  readonly hint?: string | undefined;
  readonly whole?: boolean | undefined;
  readonly wide?: boolean | undefined;
  readonly within?: boolean | undefined;
  readonly place?: string | undefined;
}

/** Words as they are typed. An emptied field is no field, unless the document needs it to tell what it is. */
export function TextIn({
  path,
  keep,
  long,
  suggest,
  ...frame
}: Common & { keep?: boolean; long?: boolean; suggest?: readonly string[] }) {
  const f = useField(path, false, frame.place);
  const list = useId();
  const put = (t: string) => f.put(t === '' && !keep ? undefined : t);
  const held = { value: textOf(f.value), onBlur: f.leave };
  return (
    <Placed {...frame} place={f.place} problems={f.problems}>
      {(ids) =>
        long ? (
          <textarea {...ids} {...held} rows={2} maxLength={4000} onChange={(e) => put(e.target.value)} />
        ) : (
          <>
            <input
              {...ids}
              {...held}
              type="text"
              autoComplete="off"
              maxLength={200}
              list={suggest?.length ? list : undefined}
              onChange={(e) => put(e.target.value)}
            />
            <Suggestions id={list} words={suggest} />
          </>
        )
      }
    </Placed>
  );
}

function Suggestions({ id, words }: { id: string; words: readonly string[] | undefined }) {
  if (!words?.length) return null;
  return (
    <datalist id={id}>
      {words.map((w) => (
        <option key={w} value={w} />
      ))}
    </datalist>
  );
}

export function DayIn({ path, keep, ...frame }: Common & { keep?: boolean }) {
  const f = useField(path, false, frame.place);
  return (
    <Placed {...frame} place={f.place} problems={f.problems}>
      {(ids) => (
        <input
          {...ids}
          type="date"
          min="1900-01-01"
          max="2199-12-31"
          value={textOf(f.value)}
          onBlur={f.leave}
          onChange={(e) => f.put(e.target.value === '' && !keep ? undefined : e.target.value)}
        />
      )}
    </Placed>
  );
}

/** A figure. What is no figure stays as it was typed, and is a problem of this field. */
export function FigureIn({ path, keep, ...frame }: Common & { keep?: boolean }) {
  const f = useField(path, false, frame.place);
  const typed = useTyped(
    shownFigure(f.value),
    (t) => f.put(t.trim() === '' ? (keep ? '' : undefined) : figureOf(t)),
    f.leave,
  );
  return (
    <Placed {...frame} place={f.place} problems={f.problems}>
      {(ids) => (
        <input
          {...ids}
          {...typed}
          type="text"
          inputMode="decimal"
          autoComplete="off"
          maxLength={40}
          className="figure"
        />
      )}
    </Placed>
  );
}

/** A word that entries and formulas name: typed as plain words. */
export function WordIn({
  path,
  keep,
  suggest,
  taken,
  ...frame
}: Common & { keep?: boolean; suggest?: readonly string[] | undefined; taken?: (word: string) => void }) {
  const f = useField(path);
  const list = useId();
  const typed = useTyped(
    shownWord(f.value),
    (t) => f.put(t.trim() === '' ? (keep ? '' : undefined) : slugOf(t) || t),
    f.leave,
  );
  return (
    <Placed {...frame} place={f.place} problems={f.problems}>
      {(ids) => (
        <>
          <input
            {...ids}
            {...typed}
            type="text"
            autoComplete="off"
            maxLength={60}
            list={suggest?.length ? list : undefined}
          />
          <Suggestions id={list} words={suggest?.map(shownWord)} />
        </>
      )}
    </Placed>
  );
}

/** A word that other places name too: they follow once the field is left. */
export function RenameIn({
  path,
  word,
  always,
  rename,
  ...frame
}: Common & {
  word?: boolean;
  /** Emptied, it shows again what it was. */
  always?: boolean;
  rename: (to: string) => void;
}) {
  const f = useField(path, false);
  const shown = word ? shownWord(f.value) : textOf(f.value);
  return (
    <Placed {...frame} place={f.place} problems={f.problems}>
      {(ids) => (
        <input
          {...ids}
          key={shown}
          type="text"
          autoComplete="off"
          maxLength={word ? 40 : 200}
          defaultValue={shown}
          onBlur={(e) => {
            const t = e.target.value.trim();
            if (always && t === '') e.target.value = shown;
            else if (t !== shown) rename(word ? slugOf(t) || t : t);
            f.leave();
          }}
        />
      )}
    </Placed>
  );
}

/** Several names in one field, divided by commas. */
export function NamesIn({ path, words, keep, ...frame }: Common & { words?: boolean; keep?: boolean }) {
  const f = useField(path, true);
  const show = (v: (typeof f)['value']) =>
    listOf(v)
      .map((x) => (words ? shownWord(x) : textOf(x)))
      .join(', ');
  const typed = useTyped(
    show(f.value),
    (t) => {
      const items = itemsOf(t).map((x) => (words ? slugOf(x) || x : x));
      f.put(items.length || keep ? items : undefined);
    },
    f.leave,
  );
  return (
    <Placed {...frame} hint={frame.hint ?? 'Several are divided by commas'} place={f.place} problems={f.problems}>
      {(ids) => <input {...ids} {...typed} type="text" autoComplete="off" maxLength={2000} />}
    </Placed>
  );
}

export interface Option {
  readonly value: string;
  readonly text: string;
}
/** One of several; a value that is none of them is shown as it stands. */
export function ChoiceIn({
  path,
  options,
  empty,
  choose,
  shown,
  ...frame
}: Common & { options: readonly Option[]; empty?: string; choose?: (value: string) => void; shown?: string }) {
  const f = useField(path, false, frame.place);
  const value = shown ?? textOf(f.value);
  return (
    <Placed {...frame} place={f.place} problems={f.problems}>
      {(ids) => (
        <Select
          ids={ids}
          value={value}
          options={options}
          {...(empty === undefined ? {} : { empty })}
          set={choose ?? ((v) => f.put(v === '' ? undefined : v))}
          leave={f.leave}
        />
      )}
    </Placed>
  );
}
export function Select({
  ids,
  value,
  options,
  empty,
  set,
  leave,
}: {
  ids: PlacedIds;
  value: string;
  options: readonly Option[];
  empty?: string;
  set: (value: string) => void;
  leave?: () => void;
}) {
  const known = options.some((o) => o.value === value);
  return (
    <select {...ids} value={value} onBlur={leave} onChange={(e) => set(e.target.value)}>
      {empty !== undefined || value === '' ? <option value="">{empty ?? 'please choose'}</option> : null}
      {known || value === '' ? null : <option value={value}>{shownWord(value)}</option>}
      {options.map((o) => (
        <option key={o.value} value={o.value}>
          {o.text}
        </option>
      ))}
    </select>
  );
}
