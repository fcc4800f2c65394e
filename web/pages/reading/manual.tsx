import { useQuery } from '@tanstack/react-query';
import type { Manual } from '../../../sheets/manual.ts';
import { get } from '../../api/client.ts';
import { Loaded } from '../../parts/loading.tsx';
import { Page } from '../../parts/page.tsx';
import { ManualView } from './manual-view.tsx';
import { ToRead } from './to-read.tsx';

export function ManualPage() {
  const manual = useQuery({ queryKey: ['reading', 'manual'], queryFn: () => get<Manual>('/api/manual') });
  return (
    <Page shop="own" title="Manual">
      <Loaded query={manual} what="Opening the manual">
        {(m) => <ManualView manual={m} />}
      </Loaded>
      <ToRead />
    </Page>
  );
}
