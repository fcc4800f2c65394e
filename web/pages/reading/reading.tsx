import { useQuery } from '@tanstack/react-query';
import type { Sheet } from '../../../sheets/model.ts';
import { get } from '../../api/client.ts';
import { Loaded } from '../../parts/loading.tsx';
import { Page } from '../../parts/page.tsx';
import { SheetView } from '../../parts/sheet-view.tsx';

/** A page about the program itself: a method, or every refusal. */
export function ReadingPage({ path, title }: { path: string; title: string }) {
  const sheet = useQuery({ queryKey: ['reading', path], queryFn: () => get<Sheet>(`/api/${path}`) });
  return (
    <Page shop="own" title={title}>
      <Loaded query={sheet}>{(s) => <SheetView sheet={s} />}</Loaded>
    </Page>
  );
}
