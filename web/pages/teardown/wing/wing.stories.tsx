import { ServerGone, ServerSaidNo } from '../../../api/client.ts';
import { storiesOf } from '../../../parts/story.ts';
import { LONG } from '../../../testing/basis.ts';
import { Opened } from '../../../testing/given.tsx';
import { allDone, jobSteps, longSteps, wingSteps, work } from '../../../testing/teardown.ts';
import { Correct } from './correct.tsx';
import { Meanwhile, NotRecorded, PlanIsNew, PlanStays } from './notices.tsx';
import { NOTHING_TYPED, type Typed } from './record.ts';
import { Recording } from './recording.tsx';
import { TakeBack } from './take-back.tsx';
import { WingDesk } from './wing-desk.tsx';

const nothing = () => undefined;
const meanwhile = new ServerSaidNo(
  {
    code: 'store.changed-meanwhile',
    given: 'Meanwhile A. Fenn recorded "off:tank" as done in entry 641',
    allowed: 'recording on top of what was last shown',
    remedy: 'Look at the steps again; nothing of yours was recorded. Record what still holds',
  },
  409,
);
const done = { what: 'done', operation: 'open:nose-row', on: '2026-11-25', by: 'M. Orne' } as const;
const finding = {
  ...{ what: 'found', look: 'doubler', finding: 'finding', note: LONG, on: '2026-11-25', by: 'M. Orne' },
  targets: [{ part: 'long', work: 'repair' }],
};
const recording =
  (step: (typeof wingSteps)[number], typed: Partial<Typed> = {}, who = 'M. Orne') =>
  () => (
    <Opened>
      <Recording
        step={step}
        typed={{ ...NOTHING_TYPED, ...typed }}
        type={nothing}
        holes={{ ...NOTHING_TYPED, ...typed }}
        typeHoles={nothing}
        who={who}
        on="2026-11-25"
        parts={[
          { id: 'spar', name: 'Right inboard spar' },
          { id: 'long', name: LONG },
        ]}
        busy={false}
        record={nothing}
        needName={nothing}
      />
    </Opened>
  );
const many = Array.from({ length: 14 }, (_, i) => `Drill out: row ${i + 1}`);

export default [
  storiesOf('The wing, step by step', [
    { state: 'typical', shows: 'typical', Draw: () => <WingDesk steps={jobSteps} work={work} /> },
    { state: 'empty, all is done', shows: 'empty', Draw: () => <WingDesk steps={allDone} work={work} /> },
    {
      state: 'failing, the program does not answer',
      shows: 'failing',
      Draw: () => <WingDesk steps={jobSteps} work={{ ...work, waiting: [done as never], error: new ServerGone() }} />,
    },
    { state: 'overflowing', shows: 'overflowing', Draw: () => <WingDesk steps={longSteps} work={work} /> },
  ]),
  storiesOf(
    'Recording at a step',
    [
      { state: 'typical, a row', shows: 'typical', Draw: recording(wingSteps[2]!, { minutes: '95' }) },
      {
        state: 'typical, a look with a finding',
        shows: 'typical',
        Draw: recording(wingSteps[3]!, { note: 'Crack of 3 mm', targets: [{ part: 'spar', work: 'replace' }] }),
      },
      { state: 'empty, a step that is done', shows: 'empty', Draw: recording(wingSteps[1]!) },
      {
        state: 'overflowing',
        shows: 'overflowing',
        Draw: recording(wingSteps[3]!, {
          note: LONG.repeat(6),
          targets: [
            { part: 'long', work: 'repair' },
            { part: '', work: 'reach' },
          ],
        }),
      },
    ],
    { failing: 'What is refused stands above the wing, with all that waits.' },
  ),
  storiesOf(
    'Record corrected',
    [
      {
        state: 'typical, a step',
        shows: 'typical',
        Draw: () => (
          <Opened>
            <Correct
              shown={{ entry: 641, record: { ...done, minutes: 95 } as never, by: 'A. Fenn' }}
              words="Done: Drill out 124 rivets"
              parts={[]}
              send={async () => undefined}
            />
          </Opened>
        ),
      },
      {
        state: 'overflowing, a finding',
        shows: 'overflowing',
        Draw: () => (
          <Opened>
            <Correct
              shown={{ entry: 642, record: finding as never, by: 'A. Fenn' }}
              words={LONG.repeat(2)}
              parts={[{ id: 'long', name: LONG }]}
              send={async () => undefined}
            />
          </Opened>
        ),
      },
    ],
    {
      empty: 'Where no record stands it is not drawn.',
      failing: 'What the server says no to stands in a notice that has stories of its own.',
    },
  ),
  storiesOf(
    'The plan stays',
    [
      {
        state: 'typical',
        shows: 'typical',
        Draw: () => <PlanStays lines={['Entry 642: Finding: Doubler: scratch of 1 mm']} seen={nothing} />,
      },
      { state: 'overflowing', shows: 'overflowing', Draw: () => <PlanStays lines={[LONG.repeat(3)]} seen={nothing} /> },
    ],
    {
      empty: 'Where no finding was recorded it is not drawn.',
      failing: 'It holds words and asks nothing of the server.',
    },
  ),
  storiesOf(
    'Record taken back',
    [
      {
        state: 'typical',
        shows: 'typical',
        Draw: () => (
          <Opened>
            <TakeBack send={async () => undefined} />
          </Opened>
        ),
      },
    ],
    {
      empty: 'Where no record stands it is not drawn.',
      failing: 'What the server says no to stands in a notice that has stories of its own.',
      overflowing: 'It holds one short reason, which its field keeps in one line.',
    },
  ),
  storiesOf(
    'The plan is new',
    [
      {
        state: 'typical',
        shows: 'typical',
        Draw: () => (
          <PlanIsNew
            change={{ added: ['Take off: Right doubler', 'Repair: Right doubler'], gone: ['Look: Doubler'] }}
            seen={nothing}
          />
        ),
      },
      {
        state: 'overflowing',
        shows: 'overflowing',
        Draw: () => <PlanIsNew change={{ added: [...many, LONG], gone: [] }} seen={nothing} />,
      },
    ],
    {
      empty: 'Where the plan holds the same steps it is not drawn.',
      failing: 'It holds words and asks nothing of the server.',
    },
  ),
  storiesOf(
    'Recorded meanwhile',
    [
      {
        state: 'typical',
        shows: 'typical',
        Draw: () => <Meanwhile lines={['A. Fenn, entry 641: Done: Take off: Right fuel tank']} seen={nothing} />,
      },
      { state: 'overflowing', shows: 'overflowing', Draw: () => <Meanwhile lines={[LONG.repeat(3)]} seen={nothing} /> },
    ],
    {
      empty: 'Where nobody else recorded anything it is not drawn.',
      failing: 'It holds words and asks nothing of the server.',
    },
  ),
  storiesOf(
    'Not recorded yet',
    [
      {
        state: 'failing, the program does not answer',
        shows: 'failing',
        Draw: () => (
          <NotRecorded
            lines={['Done: Take off: Right fuel tank', 'Nothing seen: Doubler']}
            error={new ServerGone()}
            busy={false}
            again={nothing}
            takeBack={nothing}
          />
        ),
      },
      {
        state: 'failing, another person was first',
        shows: 'failing',
        Draw: () => (
          <NotRecorded
            lines={['Done: Take off: Right fuel tank']}
            error={meanwhile}
            busy={false}
            again={nothing}
            takeBack={nothing}
          />
        ),
      },
      {
        state: 'typical, being sent again',
        shows: 'typical',
        Draw: () => (
          <NotRecorded
            lines={['Done: Take off: Right fuel tank']}
            error={new ServerGone()}
            busy={true}
            again={nothing}
            takeBack={nothing}
          />
        ),
      },
      {
        state: 'overflowing',
        shows: 'overflowing',
        Draw: () => (
          <NotRecorded
            lines={[LONG.repeat(3), ...many]}
            error={new ServerGone()}
            busy={false}
            again={nothing}
            takeBack={nothing}
          />
        ),
      },
    ],
    { empty: 'Where nothing waits it is not drawn.' },
  ),
];
