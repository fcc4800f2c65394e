import { type ReactNode, useId } from 'react';

/** A field that a gloved hand hits. */
export function BigField({
  label,
  whole,
  children,
}: {
  label: string;
  whole?: boolean;
  children: (id: string) => ReactNode;
}) {
  const id = useId();
  return (
    <div className={whole ? 'big-field whole' : 'big-field'}>
      <label htmlFor={id}>{label}</label>
      {children(id)}
    </div>
  );
}
