import { OpenWriter } from '../../../parts/basis/write-page.tsx';
import { Page } from '../../../parts/page.tsx';
import type { Table } from '../../../parts/write/json.ts';
import { placeWords } from '../../../parts/write/place-words.ts';
import { NO_SOURCE } from '../../../parts/write/source-in.tsx';
import { FloorFields } from './floor-fields.tsx';

export const emptyFloor = (): Table => ({
  sparwright: 'floor/1',
  title: '',
  currency: '',
  crew: [{ name: '', skills: [] }],
  shifts: [{ weekdays: [1, 2, 3, 4, 5], from: '07:30', to: '16:30' }],
  from: NO_SOURCE,
});
const floorPlace = placeWords(
  {
    hour_cents: 'an hour of work',
    jig_day_cents: 'a day of a jig',
    id: 'short name',
    off: 'away',
    each_cents: 'each',
    known: 'how well known',
  },
  {
    crew: 'person',
    jigs: 'jig',
    shifts: 'shift',
    fasteners: 'fastener',
    consumables: 'consumable',
    off: 'days away',
    booked: 'booked days',
    closed: 'closed days',
    skills: 'skill',
  },
);

/** The floor of the shop, new or written over a kept one. */
export function WriteFloorPage({ shop, name }: { shop: string; name: string | null }) {
  return (
    <Page shop={shop} title={name === null ? 'Describe a floor' : 'Change the floor'}>
      <OpenWriter shop={shop} word="floor" name={name} empty={emptyFloor} inWords={floorPlace}>
        <FloorFields />
      </OpenWriter>
    </Page>
  );
}
