import { storiesOf } from '../../parts/story.ts';
import { choices } from '../../testing/choices.ts';
import { readingsSheet } from '../../testing/fleet.ts';
import { Given } from '../../testing/given.tsx';
import { ReplyForm } from './reply-form.tsx';
import { RequestText } from './request-text.tsx';
import type { WantedRowProps } from './wanted-row-props.ts';

const nothing = () => undefined;
const [table] = readingsSheet(1).blocks;
const { rows, columns } = table?.block === 'table' ? table : { rows: [], columns: [] };
const props: WantedRowProps = {
  shop: 'own',
  row: rows[0]!,
  columns,
  day: '2026-11-25',
  by: 'M. Orne',
  setBy: nothing,
  tell: nothing,
};
const request =
  (words: string, by = 'M. Orne') =>
  () => (
    <Given>
      <RequestText {...props} by={by} name="ZQ-AAA" words={words} done={nothing} />
    </Given>
  );
const reply = (name: string, known: boolean) => () => (
  <Given answers={known ? [[['choices', 'own', props.row.id], choices]] : []}>
    <ReplyForm {...props} name={name} />
  </Given>
);
const WORDS = 'Dear owner,\n\nPlease write to us what the hour meter shows.\n\nM. Orne';
const REFUSED = 'A refusal stands in it as an error notice, which has its own stories.';
export default [
  storiesOf(
    'Request for a reading',
    [
      { state: 'typical', shows: 'typical', Draw: request(WORDS) },
      { state: 'empty', shows: 'empty', Draw: request('', '') },
      { state: 'overflowing', shows: 'overflowing', Draw: request(`${WORDS}\n`.repeat(30), 'Orne '.repeat(40)) },
    ],
    { failing: REFUSED },
  ),
  storiesOf(
    'Reply of the owner',
    [
      { state: 'typical', shows: 'typical', Draw: reply('ZQ-AAA', true) },
      { state: 'empty, its meters are not known yet', shows: 'empty', Draw: reply('ZQ-AAA', false) },
      { state: 'overflowing', shows: 'overflowing', Draw: reply('ZQ-'.padEnd(80, 'A'), true) },
    ],
    { failing: REFUSED },
  ),
];
