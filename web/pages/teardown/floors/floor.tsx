import { BasisPage } from '../../../parts/basis/basis-page.tsx';

/** A kept floor: crew, jigs, shifts, prices. */
export function FloorPage({ shop, name }: { shop: string; name: string }) {
  return <BasisPage shop={shop} word="floor" name={name} />;
}
