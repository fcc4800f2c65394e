import type { UseQueryResult } from '@tanstack/react-query';
import { ServerGone, ServerSaidNo } from '../api/client.ts';
import { Empty } from './empty.tsx';
import { ErrorNotice } from './error-notice.tsx';
import { Loaded, Loading } from './loading.tsx';
import { PartGone } from './part-gone.tsx';
import { storiesOf } from './story.ts';

const refusal = {
  code: 'foundation.not-a-day',
  given: '"31.02.2019"',
  allowed: 'a day as YYYY-MM-DD from 1900-01-01 to 2199-12-31',
  remedy: 'Correct the date',
};
const word = 'a'.repeat(100);
const asked = (answer: object) => ({ refetch: () => undefined, ...answer }) as unknown as UseQueryResult<string>;
const NO_ASKING = 'It is words and asks nothing of the server.';
export default [
  storiesOf('Error notice', [
    {
      state: 'typical',
      shows: 'typical',
      Draw: () => <ErrorNotice error={new ServerSaidNo({ ...refusal, source: 'W-14 issue 2' }, 422)} />,
    },
    { state: 'empty', shows: 'empty', Draw: () => <ErrorNotice error={null} /> },
    {
      state: 'failing, the server is gone',
      shows: 'failing',
      Draw: () => <ErrorNotice error={new ServerGone()} again={() => undefined} />,
    },
    {
      state: 'failing, a fault of the page',
      shows: 'failing',
      Draw: () => <ErrorNotice error={new Error('It ends before it begins: put the earlier day first.')} />,
    },
    {
      state: 'overflowing',
      shows: 'overflowing',
      Draw: () => <ErrorNotice error={new ServerSaidNo({ ...refusal, given: word, source: word }, 422)} />,
    },
  ]),
  storiesOf('Loading', [
    {
      state: 'typical',
      shows: 'typical',
      Draw: () => <Loaded query={asked({ data: 'x' })}>{() => 'It is here.'}</Loaded>,
    },
    { state: 'empty, still waiting', shows: 'empty', Draw: () => <Loading /> },
    {
      state: 'failing, nothing to show',
      shows: 'failing',
      Draw: () => <Loaded query={asked({ error: new ServerGone() })}>{() => 'It is here.'}</Loaded>,
    },
    {
      state: 'failing, what came last stays',
      shows: 'failing',
      Draw: () => <Loaded query={asked({ data: 'x', error: new ServerGone() })}>{() => 'It is here.'}</Loaded>,
    },
    {
      state: 'overflowing',
      shows: 'overflowing',
      Draw: () => <Loading what={`Reading the record of ${word}`} />,
    },
  ]),
  storiesOf(
    'Empty',
    [
      { state: 'typical', shows: 'typical', Draw: () => <Empty>No aircraft yet. Drop a logbook to begin.</Empty> },
      { state: 'empty', shows: 'empty', Draw: () => <Empty>{null}</Empty> },
      { state: 'overflowing', shows: 'overflowing', Draw: () => <Empty>{`No aircraft of ${word} yet.`}</Empty> },
    ],
    { failing: NO_ASKING },
  ),
  storiesOf('Part gone', [{ state: 'failing', shows: 'failing', Draw: () => <PartGone /> }], {
    typical: 'It stands only where a part of the program did not come.',
    empty: 'It stands only where a part of the program did not come.',
    overflowing: 'Its words are always the same.',
  }),
];
