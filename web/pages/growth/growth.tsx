import { useGrowthChoices } from '../../api/growth.ts';
import { useAsked } from '../../parts/basis/asking.tsx';
import { AskingMix } from '../../parts/basis/asking-mix.tsx';
import { BasisPage } from '../../parts/basis/basis-page.tsx';
import { WithScatter } from './chance.tsx';

/** A kept growth document with its answer, under the mix of uses that is asked about; lives with scatter below it. */
export function GrowthPage({ shop, name }: { shop: string; name: string }) {
  const choices = useGrowthChoices(shop);
  const mix = useAsked().of('mix');
  const uses = choices.data?.kept.find((k) => k.name === name)?.uses ?? [];
  return (
    <BasisPage
      shop={shop}
      word="growth"
      name={name}
      asking={uses.length ? <AskingMix uses={uses} /> : null}
      after={<WithScatter shop={shop} source={{ name, ...(mix ? { mix } : {}) }} />}
    />
  );
}
