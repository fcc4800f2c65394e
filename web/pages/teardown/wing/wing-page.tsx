import { useJobSteps } from '../../../api/teardown.ts';
import { Loaded } from '../../../parts/loading.tsx';
import { Page } from '../../../parts/page.tsx';
import { useUnits } from '../../../parts/write/units.ts';
import { JobPages } from '../job-pages.tsx';
import { useWork } from './use-work.ts';
import { WingDesk } from './wing-desk.tsx';

/** The wing step by step, on a tablet beside it: what comes off next, and what is recorded of it. */
export function WingPage({ shop, name }: { shop: string; name: string }) {
  const steps = useJobSteps(shop, name, useUnits());
  const work = useWork(shop, name, steps.data, steps.error === null ? steps.dataUpdatedAt : 0);
  const of = steps.data?.aircraft;
  return (
    <Page
      shop={shop}
      title={steps.data ? `The wing, step by step: ${steps.data.title}` : 'The wing, step by step'}
      aircraft={of ? { id: of.id, name: of.registration } : undefined}
    >
      <JobPages shop={shop} name={name} here="wing" />
      <Loaded query={steps.data ? ({ ...steps, error: null } as typeof steps) : steps} what="Reading the steps">
        {(s) => <WingDesk steps={s} work={work} />}
      </Loaded>
    </Page>
  );
}
