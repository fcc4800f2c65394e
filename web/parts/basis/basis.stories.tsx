import type { ReactNode } from 'react';
import { Router } from 'wouter';
import { ServerGone, ServerSaidNo } from '../../api/client.ts';
import { keptBases, LONG, longBases } from '../../testing/basis.ts';
import { Given, Opened } from '../../testing/given.tsx';
import { InForm } from '../../testing/in-form.tsx';
import { aircraftSheet } from '../../testing/sheets.ts';
import { storiesOf } from '../story.ts';
import { AskingOf } from './asking.tsx';
import { AskingMix } from './asking-mix.tsx';
import { SheetFiles } from './files.tsx';
import { KeepBasis } from './keep-basis.tsx';
import { KeptMeanwhile } from './kept-meanwhile.tsx';
import { LiveAnswer, NotAnswering, WholeAnswer } from './live-answer.tsx';
import { OtherUnits } from './other-units.tsx';
import { WithdrawBasis } from './withdraw-basis.tsx';

const refused = new ServerSaidNo(
  {
    code: 'usage.not-monotone',
    given: 'at uses.0.loads.1.up.3 the level 0.3 follows 0.4',
    allowed: 'levels that rise, each met no more often than the one below it',
    remedy: 'Correct this row; a table of exceedances counts all that goes beyond a level',
  },
  422,
);
const long = { ...aircraftSheet, answer: [{ text: LONG.repeat(3) }], warnings: [LONG, LONG.repeat(2)] };
const nothing = { sheet: null, old: false, computing: false, refused: null };
const keep =
  (over: { title: string; entry: number } | null, title: string, ready = true) =>
  () => (
    <Given>
      <KeepBasis
        shop="own"
        word="usage"
        draft={{ title }}
        over={over}
        ready={ready}
        because="It is not whole yet: 3 things are still to do."
        kept={() => undefined}
        take={() => undefined}
      />
    </Given>
  );
const parts = [
  { id: 'spar:L', name: 'Left inboard spar' },
  { id: 'spar:R', name: 'Right inboard spar' },
];
const uses = keptBases[0]!.uses;
/** The address of the stories has words of its own. */
const Asked = ({ children }: { children: ReactNode }) => (
  <Router searchHook={() => ''}>
    <div className="asking">{children}</div>
  </Router>
);

export default [
  storiesOf('Answer beside a form', [
    { state: 'typical', shows: 'typical', Draw: () => <LiveAnswer live={{ ...nothing, sheet: aircraftSheet }} /> },
    {
      state: 'typical, being computed anew',
      shows: 'typical',
      Draw: () => <LiveAnswer live={{ ...nothing, sheet: aircraftSheet, old: true, computing: true }} />,
    },
    { state: 'empty', shows: 'empty', Draw: () => <LiveAnswer live={nothing} /> },
    { state: 'failing', shows: 'failing', Draw: () => <LiveAnswer live={{ ...nothing, refused }} /> },
    {
      state: 'failing, the last answer stays',
      shows: 'failing',
      Draw: () => <LiveAnswer live={{ ...nothing, sheet: aircraftSheet, old: true, refused }} />,
    },
    { state: 'overflowing', shows: 'overflowing', Draw: () => <LiveAnswer live={{ ...nothing, sheet: long }} /> },
  ]),
  storiesOf(
    'Whole answer below a form',
    [
      {
        state: 'typical',
        shows: 'typical',
        Draw: () => (
          <Opened>
            <WholeAnswer sheet={aircraftSheet} />
          </Opened>
        ),
      },
      { state: 'empty', shows: 'empty', Draw: () => <WholeAnswer sheet={null} /> },
    ],
    {
      failing: 'A refusal stands beside the form; the last answer stays.',
      overflowing: 'It is a sheet, which has its own stories.',
    },
  ),
  storiesOf(
    'Form that is not answered',
    [
      {
        state: 'failing, the program is gone',
        shows: 'failing',
        Draw: () => <NotAnswering failed={new ServerGone()} again={() => undefined} />,
      },
      { state: 'empty', shows: 'empty', Draw: () => <NotAnswering failed={null} again={() => undefined} /> },
    ],
    { typical: 'It stands only where something failed.', overflowing: 'Its words are always the same.' },
  ),
  storiesOf('Keep a document', [
    { state: 'typical', shows: 'typical', Draw: keep(null, 'Whimbrel W4') },
    { state: 'typical, a new issue', shows: 'typical', Draw: keep({ title: 'Whimbrel W4', entry: 9 }, 'Whimbrel W4') },
    {
      state: 'typical, under another title',
      shows: 'typical',
      Draw: keep({ title: 'Whimbrel W4', entry: 9 }, 'Whimbrel W4-T'),
    },
    { state: 'empty, nothing to keep yet', shows: 'empty', Draw: keep(null, '', false) },
    { state: 'failing, it is not whole', shows: 'failing', Draw: keep(null, 'Whimbrel W4', false) },
    { state: 'overflowing', shows: 'overflowing', Draw: keep({ title: LONG.repeat(2), entry: 9 }, LONG) },
  ]),
  storiesOf(
    'Another issue was kept meanwhile',
    [
      {
        state: 'failing',
        shows: 'failing',
        Draw: () => (
          <KeptMeanwhile
            given={'The usage document "whimbrel-w4" was kept by M. Orne in entry 617 meanwhile'}
            take={() => undefined}
            over={() => undefined}
          />
        ),
      },
      {
        state: 'overflowing',
        shows: 'overflowing',
        Draw: () => <KeptMeanwhile given={LONG.repeat(3)} take={() => undefined} over={() => undefined} />,
      },
    ],
    { typical: 'It stands only where two wrote at once.', empty: 'It stands only where two wrote at once.' },
  ),
  storiesOf(
    'Withdraw a document',
    [
      {
        state: 'typical',
        shows: 'typical',
        Draw: () => (
          <Given>
            <Opened>
              <WithdrawBasis shop="own" word="usage" name="whimbrel" title="Whimbrel W4" />
            </Opened>
          </Given>
        ),
      },
      {
        state: 'overflowing',
        shows: 'overflowing',
        Draw: () => (
          <Given>
            <WithdrawBasis shop="own" word="usage" name="whimbrel" title={LONG.repeat(2)} />
          </Given>
        ),
      },
    ],
    {
      empty: 'It stands only where there is something to withdraw.',
      failing: 'A refusal is an error notice, which has its own stories.',
    },
  ),
  storiesOf(
    'Figures in other units',
    [
      {
        state: 'typical',
        shows: 'typical',
        Draw: () => (
          <InForm document={{ width_in: 2.5, stress: { at_1g_ksi: 6.5 } }}>
            <OtherUnits />
          </InForm>
        ),
      },
      {
        state: 'empty',
        shows: 'empty',
        Draw: () => (
          <InForm document={{ width_mm: 64 }}>
            <OtherUnits />
          </InForm>
        ),
      },
    ],
    { failing: 'It asks nothing of the server.', overflowing: 'It is one sentence with a number.' },
  ),
  storiesOf(
    'Which document, which part, what flying',
    [
      {
        state: 'typical',
        shows: 'typical',
        Draw: () => (
          <Asked>
            <AskingOf kept={keptBases} parts={parts} />
            <AskingMix uses={uses} />
            <SheetFiles path={(format) => `/api/${format}`} what="this answer" />
          </Asked>
        ),
      },
      {
        state: 'typical, shares stated',
        shows: 'typical',
        Draw: () => (
          <Asked>
            <AskingMix uses={uses} begin="private:0.7,tow:0.3" />
          </Asked>
        ),
      },
      {
        state: 'empty',
        shows: 'empty',
        Draw: () => (
          <Asked>
            <AskingOf kept={[]} parts={[]} />
            <AskingMix uses={[]} />
          </Asked>
        ),
      },
      {
        state: 'overflowing',
        shows: 'overflowing',
        Draw: () => (
          <Asked>
            <AskingOf kept={longBases} parts={longBases.map((b) => ({ id: b.name, name: b.title }))} />
            <AskingMix uses={longBases.map((b) => ({ use: b.name, title: b.title }))} begin="0:1" />
          </Asked>
        ),
      },
    ],
    { failing: 'A refusal stands where the answer would, as an error notice, which has its own stories.' },
  ),
];
