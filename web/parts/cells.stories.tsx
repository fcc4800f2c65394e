import type { Cell, DueMark } from '../../sheets/model.ts';
import { CellView } from './cell.tsx';
import { DueLine } from './due-line.tsx';
import { storiesOf } from './story.ts';
import { To } from './to.tsx';

const word = 'Unterholmverbindungsbeschlag'.repeat(6);
const text = (t: string, small?: string): Cell => ({ is: 'text', text: t, ...(small ? { small } : {}) });
const cells = (all: readonly (Cell | undefined)[]) => (
  <ul>
    {all.map((cell, i) => (
      // biome-ignore lint/suspicious/noArrayIndexKey: cells of a story never move
      <li key={i}>
        <CellView cell={cell} />
      </li>
    ))}
  </ul>
);
const standing = (worst: string, act: boolean, small?: string): Cell => ({
  is: 'standing',
  worst,
  best: worst,
  act,
  text: worst,
  ...(small ? { small } : {}),
});
const tick: DueMark = { kind: 'tick', from: 0.2, to: 0.2, treatAs: true };
const marks: readonly DueMark[] = [
  { kind: 'overdue', from: -0.1, to: 0, treatAs: true },
  tick,
  { kind: 'range', from: 0.3, to: 1, treatAs: false },
];
export default [
  storiesOf('Cell', [
    {
      state: 'typical',
      shows: 'typical',
      Draw: () =>
        cells([
          text('Left inboard spar', 'believed original to its wing'),
          standing('not yet due', false),
          { is: 'quantity', value: { low: 7060, high: 8880 }, unit: 'landings', places: 0, text: '7 060 to 8 880' },
          { is: 'link', text: 'ZQ-LMB', href: '/own/aircraft/1' },
        ]),
    },
    { state: 'empty', shows: 'empty', Draw: () => cells([undefined, { is: 'nothing' }]) },
    {
      state: 'failing',
      shows: 'failing',
      Draw: () => cells([standing('treat as due', true, 'not computed: a test case fails')]),
    },
    { state: 'overflowing', shows: 'overflowing', Draw: () => cells([text(word, word), standing(word, true, word)]) },
  ]),
  storiesOf(
    'Due line',
    [
      { state: 'typical', shows: 'typical', Draw: () => <DueLine marks={[tick]} text="treat as due mid 2028" /> },
      { state: 'empty', shows: 'empty', Draw: () => <DueLine marks={[]} text="nothing falls due" /> },
      {
        state: 'overflowing',
        shows: 'overflowing',
        Draw: () => <DueLine marks={marks} text="overdue, then 2029 on" />,
      },
    ],
    { failing: 'What could not be computed is drawn as due; the overflowing story shows what hangs over its end.' },
  ),
  storiesOf(
    'Link',
    [
      { state: 'typical', shows: 'typical', Draw: () => <To href="/own/fleet">The fleet</To> },
      { state: 'typical, of a file', shows: 'typical', Draw: () => <To href="/api/letter.pdf">The letter as PDF</To> },
      { state: 'overflowing', shows: 'overflowing', Draw: () => <To href="/own/fleet">{word}</To> },
    ],
    { empty: 'A link without words is never made.', failing: 'It asks nothing of the server.' },
  ),
];
