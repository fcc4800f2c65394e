import { storiesOf } from '../../parts/story.ts';
import { PasteDocument } from '../../parts/write/paste-document.tsx';
import { Given, Opened } from '../../testing/given.tsx';
import { ImportDocument } from './import-document.tsx';
import { WithdrawForm } from './withdraw-form.tsx';

const withdraw = (number: string, issue?: string) => () => (
  <Given>
    <Opened>
      <WithdrawForm shop="own" number={number} {...(issue ? { issue } : {})} />
    </Opened>
  </Given>
);
const REFUSED = 'A refusal stands in it as an error notice, which has its own stories.';
export default [
  storiesOf(
    'Withdraw a directive',
    [
      { state: 'typical, one issue', shows: 'typical', Draw: withdraw('W-14', '2') },
      { state: 'empty, all issues', shows: 'empty', Draw: withdraw('W-14') },
      { state: 'overflowing', shows: 'overflowing', Draw: withdraw('W-'.padEnd(90, '0'), '2') },
    ],
    { failing: REFUSED },
  ),
  storiesOf('Import a directive', [{ state: 'empty', shows: 'empty', Draw: () => <ImportDocument shop="own" /> }], {
    typical: 'It starts empty; a document that reads opens the form at once.',
    failing: REFUSED,
    overflowing: 'What is pasted scrolls in its box.',
  }),
  storiesOf(
    'Paste a directive',
    [
      {
        state: 'empty',
        shows: 'empty',
        Draw: () => (
          <Opened>
            <PasteDocument what="directive" send={() => undefined} refuse={() => undefined} />
          </Opened>
        ),
      },
    ],
    {
      typical: 'It starts empty; a document that reads fills the form at once.',
      failing: REFUSED,
      overflowing: 'What is pasted scrolls in its box.',
    },
  ),
];
