import { Link } from 'wouter';
import { BasisPage } from '../../../parts/basis/basis-page.tsx';

/** A kept structure map: picture, parts, rows, what is wrong with it. */
export function MapPage({ shop, name }: { shop: string; name: string }) {
  return (
    <BasisPage
      shop={shop}
      word="structure"
      name={name}
      after={
        <div className="actions no-print">
          <Link className="button first" href={`/${shop}/teardown/new?map=${encodeURIComponent(name)}`}>
            Plan a job on it
          </Link>
        </div>
      }
    />
  );
}
