import type { ReactNode } from 'react';
import { Link } from 'wouter';

/** A link: within the program without loading the page again, else an ordinary one. */
export function To({ href, children, className }: { href: string; children: ReactNode; className?: string }) {
  if (href.startsWith('/') && !href.startsWith('/api/') && !href.includes('#'))
    return (
      <Link href={href} className={className}>
        {children}
      </Link>
    );
  return (
    <a href={href} className={className}>
      {children}
    </a>
  );
}
