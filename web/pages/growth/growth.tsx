import { BasisPage } from '../../parts/basis/basis-page.tsx';

export const GrowthPage = ({ shop, name }: { shop: string; name: string }) => (
  <BasisPage shop={shop} word="growth" name={name} />
);
