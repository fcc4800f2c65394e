import { type ReactNode, useId } from 'react';
import type { Problem } from './problem.ts';

export interface PlacedIds {
  readonly id: string;
  readonly 'data-place': string;
  readonly 'aria-describedby'?: string;
  readonly 'aria-invalid'?: true;
}

/** A control at a place of the document: its label, its hint, and what is wrong with it, tied to it. */
export function Placed({
  place,
  label,
  problems,
  unit,
  hint,
  whole,
  wide,
  within,
  children,
}: {
  place: string;
  label: string;
  problems: readonly Problem[];
  unit?: string | undefined;
  hint?: string | undefined;
  whole?: boolean | undefined;
  /** Two columns wide, where there are two. */
  wide?: boolean | undefined;
  /** Stands within a sentence: the label is heard, not seen. */
  within?: boolean | undefined;
  children: (ids: PlacedIds) => ReactNode;
}) {
  const id = useId();
  const says = [...(hint ? [`${id}-hint`] : []), ...(problems.length ? [`${id}-wrong`] : [])].join(' ');
  return (
    <div className={`field${whole ? ' whole' : ''}${wide ? ' wide' : ''}${within ? ' within' : ''}`}>
      <label className={within ? 'hidden-text' : 'label'} htmlFor={id}>
        {label} {unit ? <span className="unit">{unit}</span> : null}
      </label>
      {children({
        id,
        'data-place': place,
        ...(says ? { 'aria-describedby': says } : {}),
        ...(problems.length ? { 'aria-invalid': true } : {}),
      })}
      {hint ? (
        <span className="hint" id={`${id}-hint`}>
          {hint}
        </span>
      ) : null}
      <Wrong id={`${id}-wrong`} problems={problems} />
    </div>
  );
}

export function Wrong({ id, problems }: { id: string; problems: readonly Problem[] }) {
  if (problems.length === 0) return null;
  return (
    <span className="wrong" id={id}>
      {problems.map((p) => p.says).join(' ')}
    </span>
  );
}
