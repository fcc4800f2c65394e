import { Router } from 'wouter';
import { storiesOf } from '../../parts/story.ts';
import { LONG } from '../../testing/basis.ts';
import { JobPages } from './job-pages.tsx';
import { OnFloor } from './on-floor.tsx';

const floors = [
  { name: 'ostrey', title: 'Ostrey Field floor' },
  { name: 'barn', title: 'The barn' },
];
/** The address of the stories has words of its own. */
const asked = (search: string, of: typeof floors) => () => (
  <Router searchHook={() => search}>
    <OnFloor floors={of} />
  </Router>
);
export default [
  storiesOf(
    'Pages of a teardown job',
    [
      { state: 'typical', shows: 'typical', Draw: () => <JobPages shop="own" name="right-spar" here="schedule" /> },
      { state: 'long name', shows: 'overflowing', Draw: () => <JobPages shop="own" name={LONG} here="wing" /> },
    ],
    {
      empty: 'A job has the same pages whatever it holds.',
      failing: 'It holds links and asks nothing of the server.',
    },
  ),
  storiesOf(
    'Floor of the calendar',
    [
      { state: 'typical', shows: 'typical', Draw: asked('floor=barn', floors) },
      { state: 'failing, a floor that is not kept', shows: 'failing', Draw: asked('floor=gone', floors) },
      {
        state: 'overflowing',
        shows: 'overflowing',
        Draw: asked('', [...floors, { name: 'long', title: LONG.repeat(2) }]),
      },
    ],
    { empty: 'With one floor, or none, it is not drawn.' },
  ),
];
