import { type KeyboardEvent, type RefObject, useMemo } from 'react';
import type { Zone } from '../../../sheets/model.ts';
import { Field, Input, Select } from '../../parts/field.tsx';
import { presentIn, type Ready } from './filter.ts';
import type { Want } from './use-wanted.ts';
import type { Wanted } from './wanted.ts';

const DATES = 'dates';
const REPLACE = { replace: true };

/** Search and filters. Each of them is a field with its name; what they hold stands in the address. */
export function Filters({
  ready,
  zones,
  wanted,
  want,
  search,
  box,
  leave,
}: {
  ready: readonly Ready[];
  zones: readonly Zone[];
  wanted: Wanted;
  want: Want;
  search: { readonly words: string; readonly setWords: (words: string) => void; readonly keep: () => void };
  box: RefObject<HTMLInputElement | null>;
  leave: () => void;
}) {
  const onKeyDown = (e: KeyboardEvent) => {
    if (e.key === 'Escape' && search.words !== '') search.setWords('');
    else if (e.key === 'Escape' || e.key === 'ArrowDown' || e.key === 'Enter') leave();
    else return;
    e.preventDefault();
  };
  return (
    // biome-ignore lint/a11y/useSemanticElements: the search element is not known to every browser
    <form className="filters no-print" role="search" aria-label="Fleet" onSubmit={(e) => e.preventDefault()}>
      <Field label="Search">
        {(ids) => (
          <input
            {...ids}
            type="search"
            ref={box}
            autoComplete="off"
            spellCheck={false}
            maxLength={200}
            placeholder="aircraft, owner, base ..."
            value={search.words}
            onChange={(e) => search.setWords(e.target.value)}
            onKeyDown={onKeyDown}
            onBlur={search.keep}
          />
        )}
      </Field>
      <Choice label="Treat as" name="standing" all="any standing" of={ready} wanted={wanted} want={want} />
      <Choice label="Type" name="type" all="every type" of={ready} wanted={wanted} want={want} />
      <Choice label="Base" name="base" all="every base" of={ready} wanted={wanted} want={want} />
      <Due zones={zones} wanted={wanted} want={want} />
      <label className="choice">
        <input type="checkbox" checked={wanted.paper} onChange={(e) => want({ paper: e.target.checked })} />
        Hangs on a paper
      </label>
    </form>
  );
}

function Choice({
  label,
  name,
  all,
  of,
  wanted,
  want,
}: {
  label: string;
  name: 'standing' | 'type' | 'base';
  all: string;
  of: readonly Ready[];
  wanted: Wanted;
  want: Want;
}) {
  const now = wanted[name];
  const options = useMemo(() => {
    const present = presentIn(of, name);
    // What an old link asks for stays choosable, or the field would say something else than the list.
    const words = now === '' || present.includes(now) ? present : [...present, now];
    return [{ value: '', text: all }, ...words.map((w) => ({ value: w, text: w }))];
  }, [of, name, all, now]);
  if (options.length === 1) return null;
  return <Select label={label} name={name} options={options} value={now} set={(v) => want({ [name]: v })} />;
}

/** A stretch of the year band, or from one day to another. */
function Due({ zones, wanted, want }: { zones: readonly Zone[]; wanted: Wanted; want: Want }) {
  const dated = wanted.due === DATES || wanted.from !== '' || wanted.to !== '';
  const options = [
    { value: '', text: 'at any time' },
    ...zones.map((z) => ({ value: z.key, text: z.text })),
    { value: DATES, text: 'between two days' },
  ];
  return (
    <>
      <Select
        label="Due"
        name="due"
        options={options}
        value={dated ? DATES : zones.some((z) => z.key === wanted.due) ? wanted.due : ''}
        set={(due) => want({ due, from: '', to: '' })}
      />
      {dated ? (
        <>
          <Input
            label="From"
            name="from"
            type="date"
            value={wanted.from}
            set={(from) => want({ from, due: DATES }, REPLACE)}
          />
          <Input label="To" name="to" type="date" value={wanted.to} set={(to) => want({ to, due: DATES }, REPLACE)} />
        </>
      ) : null}
    </>
  );
}
