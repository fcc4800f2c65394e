import { OpenWriter } from '../../../parts/basis/write-page.tsx';
import { Page } from '../../../parts/page.tsx';
import { emptyMap } from './empty.ts';
import { MapFields } from './map-fields.tsx';
import { mapPlace } from './places.ts';

/** A structure map, new or written over a kept one. */
export function WriteMapPage({ shop, name }: { shop: string; name: string | null }) {
  return (
    <Page shop={shop} title={name === null ? 'Draw a structure map' : 'Change the structure map'}>
      <OpenWriter shop={shop} word="structure" name={name} empty={emptyMap} inWords={mapPlace}>
        <MapFields />
      </OpenWriter>
    </Page>
  );
}
