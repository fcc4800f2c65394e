import { type ReactNode, useState } from 'react';

/** What most rules do not have: folded, but open where something stands in it. */
export function More({ title, open, children }: { title: string; open: boolean; children: ReactNode }) {
  const [first] = useState(open);
  return (
    <details className="more" open={first}>
      <summary>{title}</summary>
      {children}
    </details>
  );
}
