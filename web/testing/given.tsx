import { QueryClient, QueryClientProvider } from '@tanstack/react-query';
import { type ReactNode, useEffect, useRef, useState } from 'react';

const SHOPS = [{ id: 'own', name: 'Ostrey Field Structures', invented: false, aircraft: 240, entries: 9120 }];

/** A part whose questions are answered from data: nothing is asked of a server. */
export function Given({
  answers = [],
  children,
}: {
  answers?: readonly (readonly [key: readonly unknown[], answer: unknown])[];
  children: ReactNode;
}) {
  const [queries] = useState(() => {
    const client = new QueryClient();
    const usual = client.defaultQueryOptions.bind(client);
    client.defaultQueryOptions = ((options: Parameters<typeof usual>[0]) => ({
      ...usual(options),
      enabled: false,
      refetchInterval: false,
    })) as typeof usual;
    client.setQueryData(['shops'], SHOPS);
    for (const [key, answer] of answers) client.setQueryData(key, answer);
    return client;
  });
  return <QueryClientProvider client={queries}>{children}</QueryClientProvider>;
}

/** What is folded stands open, as after a click on each summary. */
export function Opened({ children }: { children: ReactNode }) {
  const box = useRef<HTMLDivElement>(null);
  useEffect(() => {
    for (const folded of box.current?.querySelectorAll('details') ?? []) folded.open = true;
  }, []);
  return <div ref={box}>{children}</div>;
}
