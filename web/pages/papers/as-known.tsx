import { type FormEvent, useState } from 'react';
import { useSearchParams } from 'wouter';
import { today } from '../../api/today.ts';

/** Shows the page again as it was on a day, with the papers then known. */
export function AsKnown() {
  const [search, setSearch] = useSearchParams();
  const on = search.get('known_on') ?? '';
  const past = on !== '' || search.has('known');
  const [day, setDay] = useState(on);
  const choose = (known: string | null) =>
    setSearch((now) => {
      for (const key of ['known', 'known_on', 'day']) now.delete(key);
      if (known) now.set('known_on', known);
      return now;
    });
  const submit = (e: FormEvent) => {
    e.preventDefault();
    if (day) choose(day);
  };
  return (
    <form className="rates as-known no-print" aria-label="As known on" onSubmit={submit}>
      <label className="choice">
        As known on&ensp;
        <input
          type="date"
          required
          min="1900-01-01"
          max={today()}
          value={day}
          onChange={(e) => setDay(e.target.value)}
        />
      </label>
      <button type="submit">Show it as it was then</button>
      {past ? (
        <button
          type="button"
          onClick={() => {
            setDay('');
            choose(null);
          }}
        >
          Back to what is known now
        </button>
      ) : null}
    </form>
  );
}
/** Which papers the address asks for: the entry number or the day of a past page, and the day of the question. */
export function useKnown() {
  const [search] = useSearchParams();
  const at = (name: string) => search.get(name) ?? undefined;
  return { known: at('known'), known_on: at('known_on'), day: at('day') };
}
