import type { ReactNode, RefObject } from 'react';
import { BigField } from './big-field.tsx';
import type { Typed } from './record.ts';

export interface PartNamed {
  readonly id: string;
  readonly name: string;
}
const WORK = [
  { value: 'replace', text: 'replace it' },
  { value: 'repair', text: 'repair it' },
  { value: 'reach', text: 'reach it' },
] as const;

/** What was found, in words, and which parts must be reached for it; what records it stands beside its last key. */
export function Finding({
  typed,
  type,
  parts,
  note,
  children,
}: {
  typed: Typed;
  type: (change: Partial<Typed>) => void;
  parts: readonly PartNamed[];
  note?: RefObject<HTMLTextAreaElement | null>;
  children?: ReactNode;
}) {
  const { targets } = typed;
  const change = (i: number, to: Partial<(typeof targets)[number]>) =>
    type({ targets: targets.map((t, k) => (k === i ? { ...t, ...to } : t)) });
  return (
    <>
      <BigField label="What was found" whole>
        {(id) => (
          <textarea
            id={id}
            ref={note}
            rows={2}
            maxLength={2000}
            value={typed.note}
            onChange={(e) => type({ note: e.target.value })}
          />
        )}
      </BigField>
      {targets.map((t, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a line is its place in the list
        <fieldset className="big-row" key={i}>
          <legend className="hidden-text">Part {i + 1} that the finding asks for</legend>
          <BigField label="Part">
            {(id) => (
              <select id={id} value={t.part} onChange={(e) => change(i, { part: e.target.value })}>
                <option value="">please choose</option>
                {parts.map((p) => (
                  <option key={p.id} value={p.id}>
                    {p.name}
                  </option>
                ))}
              </select>
            )}
          </BigField>
          <BigField label="What is to be done">
            {(id) => (
              <select id={id} value={t.work} onChange={(e) => change(i, { work: e.target.value as 'repair' })}>
                {WORK.map((w) => (
                  <option key={w.value} value={w.value}>
                    {w.text}
                  </option>
                ))}
              </select>
            )}
          </BigField>
          <button type="button" onClick={() => type({ targets: targets.filter((_, k) => k !== i) })}>
            Take away<span className="hidden-text"> part {i + 1}</span>
          </button>
        </fieldset>
      ))}
      <p className="soft">Without a part named here, the plan takes what the map says of such a finding.</p>
      <div className="big-actions">
        <button type="button" onClick={() => type({ targets: [...targets, { part: '', work: 'repair' }] })}>
          Name a part
        </button>
        {children}
      </div>
    </>
  );
}
