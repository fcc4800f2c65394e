import type { Shop } from '../../api/shops.ts';
import { storiesOf } from '../../parts/story.ts';
import { KeepCopy } from './keep-copy.tsx';
import { RemoveDemo } from './remove-demo.tsx';

const shop = (name: string, entries = 9120): Shop => ({ id: name, name, invented: false, aircraft: 4, entries });
const LONG = 'Consolidated Structures and Restoration Works of the Upper Valley, Limited';
const REFUSED = 'A refusal stands in it as an error notice, which has its own stories.';
export default [
  storiesOf(
    'Keep a copy',
    [
      { state: 'typical', shows: 'typical', Draw: () => <KeepCopy shops={[shop('Ostrey Field Structures')]} /> },
      { state: 'empty', shows: 'empty', Draw: () => <KeepCopy shops={[shop('Ostrey Field Structures', 0)]} /> },
      {
        state: 'overflowing',
        shows: 'overflowing',
        Draw: () => <KeepCopy shops={Array.from({ length: 9 }, (_, i) => shop(`${LONG} ${i}`))} />,
      },
    ],
    { failing: REFUSED },
  ),
  storiesOf('Remove the demo', [{ state: 'typical', shows: 'typical', Draw: () => <RemoveDemo shop="demo" /> }], {
    empty: 'It stands only where there is a demo.',
    failing: REFUSED,
    overflowing: 'Its words are always the same.',
  }),
];
