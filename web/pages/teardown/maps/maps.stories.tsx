import { storiesOf } from '../../../parts/story.ts';
import { Opened } from '../../../testing/given.tsx';
import { InForm, wrong } from '../../../testing/in-form.tsx';
import { floorExample, structureExample } from '../../../testing/wing-map.ts';
import { FloorFields } from '../floors/floor-fields.tsx';
import { emptyFloor } from '../floors/write-page.tsx';
import { emptyMap } from './empty.ts';
import { MapFields } from './map-fields.tsx';
import { NeedsIn } from './needs-in.tsx';

type Problems = ReturnType<typeof wrong>[];
const map =
  (document: unknown, problems: Problems = []) =>
  () => (
    <InForm document={document} problems={problems}>
      <Opened>
        <MapFields />
      </Opened>
    </InForm>
  );
const floor =
  (document: unknown, problems: Problems = []) =>
  () => (
    <InForm document={document} problems={problems}>
      <Opened>
        <FloorFields />
      </Opened>
    </InForm>
  );
const needs =
  (of: unknown, problems: Problems = []) =>
  () => (
    <InForm document={{ ...structureExample, own: { needs: of } }} problems={problems}>
      <NeedsIn path={['own', 'needs']} title="Before it is opened" none="Nothing: it can be opened where it stands." />
    </InForm>
  );
const LONG =
  'The row through the outboard nose section, the upper aft skin, both spar caps and the plate of the splice';
const long = {
  ...structureExample,
  title: LONG,
  parts: structureExample.parts.map((p) => ({ ...p, name: `${p.name}: ${LONG}` })),
  joins: structureExample.joins.map((j) => ({ ...j, name: `${j.name}: ${LONG}` })),
};

export default [
  storiesOf('Teardown, the map in its form', [
    { state: 'typical', shows: 'typical', Draw: map(structureExample) },
    { state: 'empty', shows: 'empty', Draw: map(emptyMap()) },
    {
      state: 'failing',
      shows: 'failing',
      Draw: map(structureExample, [
        wrong('parts.0.name', 'nothing yet. Write a name.'),
        wrong('joins.3.fasteners.count', '"many". Correct it: a whole number from 1.'),
        wrong('looks.1.chance', '8. Correct it: at most 1.'),
      ]),
    },
    { state: 'overflowing', shows: 'overflowing', Draw: map(long) },
  ]),
  storiesOf('Teardown, what is needed first', [
    {
      state: 'typical',
      shows: 'typical',
      Draw: needs([
        'off:left-tank',
        { any: ['off:left-panel-outboard', ['off:left-upper-skin-outboard', 'open:left-row-tip']], because: 'reach' },
      ]),
    },
    { state: 'empty', shows: 'empty', Draw: needs([]) },
    {
      state: 'failing',
      shows: 'failing',
      Draw: needs(['off:left-engine', ''], [wrong('own.needs.1', 'nothing yet. Choose a step.')]),
    },
    {
      state: 'overflowing',
      shows: 'overflowing',
      Draw: needs([
        {
          any: structureExample.parts
            .slice(1, 9)
            .map((p) => [`off:${p.id}`, 'support:left-cradle', 'open:left-row-tip']),
          because: LONG,
        },
      ]),
    },
  ]),
  storiesOf('Teardown, the floor in its form', [
    { state: 'typical', shows: 'typical', Draw: floor(floorExample) },
    { state: 'empty', shows: 'empty', Draw: floor(emptyFloor()) },
    {
      state: 'failing',
      shows: 'failing',
      Draw: floor(floorExample, [
        wrong('hour_cents', '"sixty". Correct it: a sum.'),
        wrong('shifts.0', 'it ends before it begins. Correct its times.'),
      ]),
    },
    {
      state: 'overflowing',
      shows: 'overflowing',
      Draw: floor({
        ...floorExample,
        title: LONG,
        crew: Array.from({ length: 6 }, (_, i) => ({ name: `${LONG} ${i}`, skills: Array(8).fill(`skill-${i}`) })),
      }),
    },
  ]),
];
