import { BasisPage } from '../../parts/basis/basis-page.tsx';

export const UsagePage = ({ shop, name }: { shop: string; name: string }) => (
  <BasisPage shop={shop} word="usage" name={name} />
);
