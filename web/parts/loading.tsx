import type { UseQueryResult } from '@tanstack/react-query';
import type { ReactNode } from 'react';
import { ErrorNotice } from './error-notice.tsx';

export function Loading({ what = 'Reading the record' }: { what?: string }) {
  return (
    <p className="loading" role="status">
      {what} ...
    </p>
  );
}

/** Waits for an answer of the server, says what went wrong, or draws. */
export function Loaded<T>({
  query,
  what,
  children,
}: {
  query: UseQueryResult<T>;
  what?: string;
  children: (data: T) => ReactNode;
}) {
  if (query.data !== undefined)
    return (
      <>
        {query.error ? <ErrorNotice error={query.error} again={() => void query.refetch()} /> : null}
        {children(query.data)}
      </>
    );
  if (query.error) return <ErrorNotice error={query.error} again={() => void query.refetch()} />;
  return <Loading {...(what ? { what } : {})} />;
}
