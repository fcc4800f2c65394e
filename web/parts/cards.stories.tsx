import type { Card, CardsBlock } from '../../sheets/model.ts';
import { LONG } from '../testing/basis.ts';
import { jobSteps, wingSteps } from '../testing/teardown.ts';
import { Cards } from './cards.tsx';
import { storiesOf } from './story.ts';

const gate: Card = {
  id: 'card-1',
  number: 'Card 1 of 2',
  stage: 'Preparing',
  title: 'Survey and datum holes',
  stop: 'Stop. Taking down does not begin before this shop has passed this gate.',
  first: '',
  steps: [
    { id: 'a', title: 'Survey and datum holes', facts: ['2 persons', '1.0 to 4.0 h'], done: '24 Nov 2026, M. Orne' },
  ],
  shown: null,
  signs: ['Date and initials'],
};
const step: Card = {
  id: 'card-2',
  number: 'Card 2 of 2',
  stage: 'Taking down',
  title: 'Take off: Right fuel tank',
  first: 'First: survey and datum holes.',
  steps: [
    { id: 'b', title: 'Take out: tank screws, 38 off', facts: ['38 screws', '1 person'] },
    { id: 'c', title: 'Take off: Right fuel tank', facts: ['2 persons', '20 to 45 min'] },
  ],
  shown: wingSteps[1]!.shown,
  signs: ['Date and initials', 'Inspector'],
};
const block = (cards: readonly Card[]): CardsBlock => ({
  block: 'cards',
  title: 'Work cards',
  scene: jobSteps.scene,
  cards,
  table: { block: 'table', title: 'Steps', columns: [], rows: [], empty: '' },
  empty: 'Nothing is to be done.',
});
const long: Card = { ...step, id: 'card-3', title: LONG.repeat(2), first: LONG.repeat(3), signs: [LONG] };

export default storiesOf(
  'Work cards',
  [
    { state: 'typical', shows: 'typical', Draw: () => <Cards block={block([gate, step])} /> },
    {
      state: 'typical, by stage',
      shows: 'typical',
      Draw: () => (
        <Cards
          block={{
            ...block([gate, step]),
            folds: [
              { title: 'Preparing', note: '1 card, all done', count: 1, open: false },
              { title: 'Taking down', note: '1 card; next: take out tank screws', count: 1, open: true },
            ],
          }}
        />
      ),
    },
    { state: 'empty', shows: 'empty', Draw: () => <Cards block={block([])} /> },
    { state: 'overflowing', shows: 'overflowing', Draw: () => <Cards block={block([long])} /> },
  ],
  { failing: 'It draws what the sheet holds and asks nothing of the server.' },
);
