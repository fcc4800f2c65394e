import { PageNotices } from './page-notices.tsx';
import { storiesOf } from './story.ts';

const LATE = 'The clock of this machine stands before the last entry of the log. Set it right.';
export default storiesOf('Notices of a page', [
  { state: 'typical, the demo', shows: 'typical', Draw: () => <PageNotices invented gone={false} /> },
  { state: 'empty', shows: 'empty', Draw: () => <PageNotices invented={false} gone={false} /> },
  { state: 'failing, the program is gone', shows: 'failing', Draw: () => <PageNotices invented={false} gone /> },
  {
    state: 'failing, the clock is behind',
    shows: 'failing',
    Draw: () => <PageNotices invented={false} gone={false} clock={LATE} />,
  },
  {
    state: 'overflowing, all at once',
    shows: 'overflowing',
    Draw: () => <PageNotices invented gone clock={`${LATE} `.repeat(8)} />,
  },
]);
