import { storiesOf } from '../../../parts/story.ts';
import { KeptLine } from '../../../parts/write/kept-line.tsx';
import { ProblemList } from '../../../parts/write/problem-list.tsx';
import { Given } from '../../../testing/given.tsx';
import { aircraftSheet } from '../../../testing/sheets.ts';
import { standings } from '../../../testing/tables.ts';
import { Adopt } from './adopt.tsx';
import { CaseFields } from './case-fields.tsx';
import { CasesColumn } from './cases-column.tsx';
import { KeepOnServer } from './keep-on-server.tsx';
import { placeInWords } from './places.ts';
import { Changes, ReadBackView } from './read-back-view.tsx';
import { LONG, RULE, Written } from './testing.tsx';
import { Tried, TryFleet } from './try-fleet.tsx';

const SAID = [
  { heading: 'Whom it affects', sentences: ['Model W4-T, serials 0600 to 0700.'] },
  { heading: 'Look at the attach fitting', sentences: ['First due: 8 000 counted landings.', 'Effective 2026-10-01.'] },
];
const WIDE = [{ heading: LONG, sentences: [LONG] }];
const nothing = () => undefined;
const kept = { at: '2026-11-25T15:43:00Z', other: null, setAside: nothing, forget: nothing };
const other = { document: {}, at: '2026-11-25T15:44:00Z', tab: 'b', entry: null };
const READY = { answer: [], ready: true, because: '' };
const NOT_YET = { answer: [], ready: false, because: 'W-31 issue 1 is not whole yet: 2 things are still to do.' };
type Result = Parameters<typeof CaseFields>[0]['result'];
const one = (result: Result) => () => (
  <Written document={RULE}>{() => <CaseFields index={0} result={result} fresh />}</Written>
);
const server = (by: string, entry: number) =>
  [['directive draft', 'own', 'W-31'], { number: 'W-31', document: {}, by, on: '2026-11-24', entry }] as const;
const keep =
  (answers: Parameters<typeof Given>[0]['answers'], draft: Parameters<typeof KeepOnServer>[0]['draft']) => () => (
    <Given answers={answers ?? []}>
      <KeepOnServer shop="own" draft={draft} known={40} send={nothing} kept={nothing} thrownAway={nothing} />
    </Given>
  );
const REFUSED = 'A refusal stands in it as an error notice, which has its own stories.';

export default [
  storiesOf('Directive, a test case', [
    {
      state: 'typical',
      shows: 'typical',
      Draw: one({ name: 'at the limit', passes: true, because: 'due', standing: 'due', counted: 8000, left: 0 }),
    },
    { state: 'empty, not run yet', shows: 'empty', Draw: one(undefined) },
    {
      state: 'failing',
      shows: 'failing',
      Draw: one({
        name: 'x',
        passes: false,
        because: 'stands "overdue", not "due"',
        standing: 'overdue',
        counted: 8001,
      }),
    },
    {
      state: 'overflowing, cannot be computed',
      shows: 'overflowing',
      Draw: one({ name: 'x', passes: false, because: `50 / 0, place 1 of the formula. ${LONG}` }),
    },
  ]),
  storiesOf(
    'Directive, its test cases',
    [
      {
        state: 'typical',
        shows: 'typical',
        Draw: () => <Written document={RULE}>{() => <CasesColumn checked={undefined} />}</Written>,
      },
      {
        state: 'empty',
        shows: 'empty',
        Draw: () => <Written document={{ actions: [] }}>{() => <CasesColumn checked={undefined} />}</Written>,
      },
    ],
    { failing: 'A case that fails has its own stories.', overflowing: 'A long case has its own stories.' },
  ),
  storiesOf('Directive, read back', [
    { state: 'typical', shows: 'typical', Draw: () => <ReadBackView said={SAID} old={false} /> },
    { state: 'empty', shows: 'empty', Draw: () => <ReadBackView said={null} old={false} /> },
    { state: 'failing, half typed', shows: 'failing', Draw: () => <ReadBackView said={SAID} old /> },
    { state: 'overflowing', shows: 'overflowing', Draw: () => <ReadBackView said={WIDE} old={false} /> },
  ]),
  storiesOf(
    'Directive, changes',
    [
      {
        state: 'typical',
        shows: 'typical',
        Draw: () => <Changes gone={SAID.slice(1)} come={SAID.slice(1)} of="issue 1" />,
      },
      { state: 'empty', shows: 'empty', Draw: () => <Changes gone={[]} come={[]} of="issue 1" /> },
      { state: 'overflowing', shows: 'overflowing', Draw: () => <Changes gone={WIDE} come={WIDE} of={LONG} /> },
    ],
    { failing: 'It compares two texts; nothing in it can fail.' },
  ),
  storiesOf(
    'Directive, what is missing',
    [
      {
        state: 'typical',
        shows: 'typical',
        Draw: () => (
          <ProblemList
            touch={nothing}
            inWords={placeInWords}
            problems={[
              { path: 'title', says: 'Fill it in.', missing: true },
              { path: 'actions.0.first.first_of.1.months', says: 'Fill it in: a number.', missing: true },
            ]}
          />
        ),
      },
      {
        state: 'empty',
        shows: 'empty',
        Draw: () => <ProblemList touch={nothing} inWords={placeInWords} problems={[]} />,
      },
      {
        state: 'overflowing',
        shows: 'overflowing',
        Draw: () => (
          <ProblemList
            touch={nothing}
            inWords={placeInWords}
            problems={Array.from({ length: 30 }, (_, i) => ({
              path: `cases.${i}.facts.landings.tow`,
              says: LONG,
              missing: false,
            }))}
          />
        ),
      },
    ],
    { failing: 'What it lists is what fails.' },
  ),
  storiesOf(
    'Directive, kept in the browser',
    [
      {
        state: 'typical',
        shows: 'typical',
        Draw: () => <KeptLine kept={kept} send={nothing} otherwise="keep the draft on the server" />,
      },
      {
        state: 'failing, the browser keeps nothing',
        shows: 'failing',
        Draw: () => <KeptLine kept={{ ...kept, at: false }} send={nothing} otherwise="keep the draft on the server" />,
      },
      {
        state: 'failing, the draft is too large',
        shows: 'failing',
        Draw: () => (
          <KeptLine
            kept={{ ...kept, at: false, tooLarge: { last: kept.at as string } }}
            send={nothing}
            otherwise="keep the draft on the server"
            file={{ document: { title: 'A draft' }, name: 'draft' }}
          />
        ),
      },
      {
        state: 'failing, another tab wrote',
        shows: 'failing',
        Draw: () => <KeptLine kept={{ ...kept, other }} send={nothing} otherwise="keep the draft on the server" />,
      },
    ],
    { empty: 'It always says whether the draft is kept.', overflowing: 'Its words are always the same.' },
  ),
  storiesOf('Directive, kept on the server', [
    { state: 'typical', shows: 'typical', Draw: keep([server('M. Orne', 40)], { number: 'W-31' }) },
    { state: 'empty, no number yet', shows: 'empty', Draw: keep([], {}) },
    { state: 'failing, another kept one', shows: 'failing', Draw: keep([server('B. Elling', 44)], { number: 'W-31' }) },
    { state: 'overflowing', shows: 'overflowing', Draw: keep([server(LONG, 44)], { number: 'W-31' }) },
  ]),
  storiesOf(
    'Directive, tried on the fleet',
    [
      {
        state: 'typical',
        shows: 'typical',
        Draw: () => <Tried sheet={{ ...aircraftSheet, blocks: [standings] }} old={false} />,
      },
      {
        state: 'empty, not tried yet',
        shows: 'empty',
        Draw: () => (
          <Given>
            <TryFleet shop="own" draft={{}} state={READY} />
          </Given>
        ),
      },
      {
        state: 'failing, it does not read yet',
        shows: 'failing',
        Draw: () => (
          <Given>
            <TryFleet shop="own" draft={{}} state={NOT_YET} />
          </Given>
        ),
      },
      {
        state: 'failing, changed since',
        shows: 'failing',
        Draw: () => <Tried sheet={{ ...aircraftSheet, blocks: [] }} old />,
      },
    ],
    { overflowing: 'Its list is a table, which has its own stories.' },
  ),
  storiesOf(
    'Directive, adopt',
    [
      {
        state: 'empty, ready to be adopted',
        shows: 'empty',
        Draw: () => (
          <Given>
            <Adopt shop="own" draft={{}} state={READY} adopted={nothing} />
          </Given>
        ),
      },
      {
        state: 'failing, it does not read yet',
        shows: 'failing',
        Draw: () => (
          <Given>
            <Adopt shop="own" draft={{}} state={NOT_YET} adopted={nothing} />
          </Given>
        ),
      },
    ],
    { typical: 'It starts empty: a person fills in his own name.', overflowing: REFUSED },
  ),
];
