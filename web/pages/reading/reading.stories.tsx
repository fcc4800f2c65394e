import { storiesOf } from '../../parts/story.ts';
import { ManualView } from './manual-view.tsx';
import { ToRead } from './to-read.tsx';

const DOT = 'data:image/gif;base64,R0lGODlhAQABAIAAAAAAAP///yH5BAEAAAAALAAAAAABAAEAAAIBRAA7';
const LONG = 'Sparrenbefundungsaufzeichnung'.repeat(8);
const section = (title: string) => ({
  title,
  parts: [
    { is: 'paragraph', text: 'Answer six questions.' },
    { is: 'list', items: ['the total', 'the year it was built'] },
    { is: 'picture', address: DOT, text: 'Answering a caller' },
  ] as const,
});
export default [
  storiesOf(
    'Manual',
    [
      {
        state: 'typical',
        shows: 'typical',
        Draw: () => <ManualView manual={{ title: 'Short manual', sections: [section('Someone calls')] }} />,
      },
      { state: 'empty', shows: 'empty', Draw: () => <ManualView manual={{ title: 'Short manual', sections: [] }} /> },
      {
        state: 'overflowing',
        shows: 'overflowing',
        Draw: () => <ManualView manual={{ title: LONG, sections: [section(LONG), section(`${LONG} again`)] }} />,
      },
    ],
    { failing: 'The page around it says what failed.' },
  ),
  storiesOf('To read', [{ state: 'typical', shows: 'typical', Draw: () => <ToRead /> }], {
    empty: 'Its links are always the same.',
    failing: 'It asks nothing of the server.',
    overflowing: 'Its links are always the same.',
  }),
];
