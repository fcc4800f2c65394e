import type { ReactNode } from 'react';

/** Nothing here yet, and what would bring something. */
export function Empty({ children }: { children: ReactNode }) {
  return <div className="empty">{children}</div>;
}
