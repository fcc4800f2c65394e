import { useSearchParams } from 'wouter';
import type { KeptBasis } from '../../api/usage.ts';

/** Puts one word of the question into the address; empty takes it out. */
export function useAsked() {
  const [search, setSearch] = useSearchParams();
  const ask = (key: string, value: string) =>
    setSearch(
      (now) => {
        if (value === '') now.delete(key);
        else now.set(key, value);
        return now;
      },
      { replace: true },
    );
  return { of: (key: string) => search.get(key) ?? '', ask };
}

/** One word of the question, chosen from a list; a word that is not in it is shown as it stands. */
function AskedSelect({
  label,
  of,
  first,
  options,
}: {
  label: string;
  /** Its key in the address. */
  of: string;
  /** What it is where nothing is chosen. */
  first: string;
  options: readonly { readonly value: string; readonly text: string }[];
}) {
  const asked = useAsked();
  const value = asked.of(of);
  const strange = value !== '' && !options.some((o) => o.value === value);
  return (
    <label className="choice wraps">
      {label}&ensp;
      <select value={value} onChange={(e) => asked.ask(of, e.target.value)}>
        <option value="">{first}</option>
        {strange ? <option value={value}>{value}</option> : null}
        {options.map((o) => (
          <option key={o.value} value={o.value}>
            {o.text}
          </option>
        ))}
      </select>
    </label>
  );
}

/** Which kept document, and which part: of several that fit, the page takes the one made for the model and the worst part. */
export function AskingOf({
  kept,
  parts,
}: {
  kept: readonly KeptBasis[];
  parts: readonly { readonly id: string; readonly name: string }[];
}) {
  return (
    <>
      {kept.length ? (
        <AskedSelect
          label="By the document"
          of="basis"
          first="made for its model"
          options={kept.map((k) => ({ value: k.name, text: k.title }))}
        />
      ) : null}
      {parts.length ? (
        <AskedSelect
          label="Part"
          of="part"
          first="where the place lies"
          options={parts.map((p) => ({ value: p.id, text: p.name }))}
        />
      ) : null}
    </>
  );
}
