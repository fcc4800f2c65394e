import { BasisListPage } from '../../parts/basis/basis-list-page.tsx';

export const GrowthListPage = ({ shop }: { shop: string }) => (
  <BasisListPage shop={shop} word="growth" title="Growth" />
);
