import { storiesOf } from '../../parts/story.ts';
import { choices, longChoices } from '../../testing/choices.ts';
import { Given, Opened } from '../../testing/given.tsx';
import { ManyAlternativesForm } from './many-form.tsx';
import { Revoke } from './revoke.tsx';

const revoke = (references: readonly string[]) => () => (
  <Given>
    <Revoke shop="own" references={references} day="2026-11-25" />
  </Given>
);
const many = (directives: typeof choices.directives) => () => (
  <Given>
    <Opened>
      <ManyAlternativesForm shop="own" choices={{ day: '2026-11-25', references: [], aircraft: [], directives }} />
    </Opened>
  </Given>
);
export default [
  storiesOf(
    'Revoke',
    [
      { state: 'typical', shows: 'typical', Draw: revoke(['ASB/2026/117']) },
      { state: 'empty', shows: 'empty', Draw: revoke([]) },
      { state: 'overflowing', shows: 'overflowing', Draw: revoke(['ASB/2026/117-'.padEnd(140, '0')]) },
    ],
    { failing: 'A refusal stands where the answer would, as an error notice, which has its own stories.' },
  ),
  storiesOf(
    'Entry form, alternative for several',
    [
      { state: 'typical', shows: 'typical', Draw: many(choices.directives) },
      { state: 'empty, no directive adopted', shows: 'empty', Draw: many([]) },
      { state: 'overflowing', shows: 'overflowing', Draw: many(longChoices.directives) },
    ],
    { failing: 'What is refused stands in the frame of every such form; the part Entry form shows it.' },
  ),
];
