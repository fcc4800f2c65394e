import type { ButtonHTMLAttributes } from 'react';

/** A button that keeps the focus while its work is done: pressed meanwhile, it does nothing. Nor does Enter in its form. */
export function BusyButton({
  busy,
  onClick,
  type = 'submit',
  ...rest
}: ButtonHTMLAttributes<HTMLButtonElement> & { busy: boolean }) {
  return (
    <button
      {...rest}
      type={type}
      aria-disabled={busy || undefined}
      onClick={(e) => {
        if (busy) e.preventDefault();
        else onClick?.(e);
      }}
    />
  );
}
