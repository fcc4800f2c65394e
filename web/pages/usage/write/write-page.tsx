import { useUsageChoices } from '../../../api/usage.ts';
import { OpenWriter } from '../../../parts/basis/write-page.tsx';
import { Loaded } from '../../../parts/loading.tsx';
import { Page } from '../../../parts/page.tsx';
import { UsageChoicesContext } from './choices.ts';
import { emptyUsage } from './empty.ts';
import { usagePlace } from './places.ts';
import { UsageFields } from './usage-fields.tsx';

/** A usage document, new or written over a kept one. */
export function WriteUsagePage({ shop, name }: { shop: string; name: string | null }) {
  const choices = useUsageChoices(shop);
  return (
    <Page shop={shop} title={name === null ? 'Write a usage document' : 'Write a new issue'}>
      <Loaded query={choices} what="Reading the libraries">
        {(c) => (
          <UsageChoicesContext value={c}>
            <OpenWriter shop={shop} word="usage" name={name} empty={emptyUsage} inWords={usagePlace}>
              <UsageFields />
            </OpenWriter>
          </UsageChoicesContext>
        )}
      </Loaded>
    </Page>
  );
}
