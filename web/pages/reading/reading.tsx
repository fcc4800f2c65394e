import { useQuery } from '@tanstack/react-query';
import { useEffect } from 'react';
import type { Sheet } from '../../../sheets/model.ts';
import { get } from '../../api/client.ts';
import { Loaded } from '../../parts/loading.tsx';
import { Page } from '../../parts/page.tsx';
import { SheetView } from '../../parts/sheet-view.tsx';
import { ToRead } from './to-read.tsx';

/** A page about the program itself: a method, or every refusal. */
export function ReadingPage({ path, title }: { path: string; title: string }) {
  const sheet = useQuery({ queryKey: ['reading', path], queryFn: () => get<Sheet>(`/api/${path}`) });
  const there = sheet.data !== undefined;
  // The row that the address names comes after the page: the browser goes to it once more.
  useEffect(() => {
    if (there && window.location.hash) window.location.replace(window.location.hash);
  }, [there]);
  return (
    <Page shop="own" title={title}>
      <div className="reading">
        <Loaded query={sheet} what="Opening the page">
          {(s) => <SheetView sheet={s} />}
        </Loaded>
      </div>
      <ToRead />
    </Page>
  );
}
