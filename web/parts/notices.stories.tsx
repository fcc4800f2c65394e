import { ServerGone, ServerSaidNo } from '../api/client.ts';
import { Empty } from './empty.tsx';
import { ErrorNotice } from './error-notice.tsx';
import { Loading } from './loading.tsx';
import type { Stories } from './story.ts';

const refusal = {
  code: 'foundation.not-a-day',
  given: '"31.02.2019"',
  allowed: 'a day as YYYY-MM-DD from 1900-01-01 to 2199-12-31',
  remedy: 'Correct the date',
};
const word = 'aaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaa';
const stories: Stories = {
  part: 'Error notice, loading, empty',
  stories: [
    { state: 'refusal, typical', Draw: () => <ErrorNotice error={new ServerSaidNo(refusal, 422)} /> },
    {
      state: 'refusal, overflowing',
      Draw: () => <ErrorNotice error={new ServerSaidNo({ ...refusal, given: word, source: word }, 422)} />,
    },
    { state: 'server gone', Draw: () => <ErrorNotice error={new ServerGone()} again={() => undefined} /> },
    { state: 'loading', Draw: () => <Loading /> },
    { state: 'empty', Draw: () => <Empty>No aircraft yet. Drop a logbook to begin.</Empty> },
  ],
};
export default stories;
