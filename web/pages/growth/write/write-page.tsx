import { useGrowthChoices } from '../../../api/growth.ts';
import { OpenWriter } from '../../../parts/basis/write-page.tsx';
import { Loaded } from '../../../parts/loading.tsx';
import { Page } from '../../../parts/page.tsx';
import { GrowthChoicesContext } from './choices.ts';
import { emptyGrowth } from './empty.ts';
import { GrowthFields } from './growth-fields.tsx';
import { growthPlace } from './places.ts';

/** A growth document, new or written over a kept one. */
export function WriteGrowthPage({ shop, name }: { shop: string; name: string | null }) {
  const choices = useGrowthChoices(shop);
  return (
    <Page shop={shop} title={name === null ? 'Write a growth document' : 'Write a new issue'}>
      <Loaded query={choices} what="Reading the libraries">
        {(c) => (
          <GrowthChoicesContext value={c}>
            <OpenWriter shop={shop} word="growth" name={name} empty={emptyGrowth} inWords={growthPlace}>
              <GrowthFields />
            </OpenWriter>
          </GrowthChoicesContext>
        )}
      </Loaded>
    </Page>
  );
}
