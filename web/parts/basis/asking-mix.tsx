import { useState } from 'react';
import { shownWord } from '../write/figures.ts';
import { useAsked } from './asking.tsx';

const SHARES = 'shares';
interface Use {
  readonly use: string;
  readonly title: string;
}
const statedIn = (mix: string): ReadonlyMap<string, string> =>
  new Map(mix.split(',').map((p) => [p.split(':')[0] ?? '', p.split(':')[1] ?? '']));

/** The flying to come: as flown, all in one use, or shares that are stated. */
export function AskingMix({ uses, begin = '' }: { uses: readonly Use[]; begin?: string }) {
  const asked = useAsked();
  const mix = asked.of('mix') || begin;
  const [stating, state] = useState(mix.includes(':'));
  const named = uses.some((u) => u.use === mix) || mix === 'as flown';
  const value = stating ? SHARES : mix === '' || named ? mix : SHARES;
  const choose = (v: string) => {
    state(v === SHARES);
    if (v !== SHARES) asked.ask('mix', v);
  };
  return (
    <>
      <label className="choice wraps">
        Flying to come&ensp;
        <select value={value} onChange={(e) => choose(e.target.value)}>
          <option value="">as its document says</option>
          <option value="as flown">as flown lately</option>
          {uses.map((u) => (
            <option key={u.use} value={u.use}>
              all in {u.title || shownWord(u.use)}
            </option>
          ))}
          <option value={SHARES}>shares, stated here</option>
        </select>
      </label>
      {value === SHARES ? <Shares key={mix} uses={uses} mix={mix} show={(m) => asked.ask('mix', m)} /> : null}
    </>
  );
}

function Shares({ uses, mix, show }: { uses: readonly Use[]; mix: string; show: (mix: string) => void }) {
  const stated = statedIn(mix);
  return (
    <form
      className="shares"
      aria-label="Shares of the hours"
      onSubmit={(e) => {
        e.preventDefault();
        const data = new FormData(e.currentTarget);
        const given = uses
          .map((u) => [u.use, String(data.get(u.use) ?? '').trim()] as const)
          .filter(([, s]) => s !== '');
        show(given.map(([use, share]) => `${use}:${share}`).join(','));
      }}
    >
      {uses.map((u) => (
        <label key={u.use} className="choice">
          {u.title || shownWord(u.use)}&ensp;
          <input
            name={u.use}
            type="number"
            min="0"
            max="1"
            step="any"
            inputMode="decimal"
            defaultValue={stated.get(u.use) ?? ''}
          />
        </label>
      ))}
      <button type="submit">Show it at these shares</button>
      <span className="soft">Shares of the hours, together 1: 0.7 and 0.3</span>
    </form>
  );
}
