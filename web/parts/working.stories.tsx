import { working } from '../testing/tables.ts';
import { Caution, Warnings } from './caution.tsx';
import { storiesOf } from './story.ts';
import { Working } from './working.tsx';

const long = working.map((s) => ({
  ...s,
  formula: 'hours.tow * 3 + hours.survey * 2 + '.repeat(12),
  entries: Array.from({ length: 60 }, (_, i) => String(i)),
}));
const failed = [{ ...working[0]!, value: 'not computed', source: 'A test case of W-14 fails', entries: [] }];
export default [
  storiesOf('Working', [
    { state: 'typical', shows: 'typical', Draw: () => <Working steps={working} /> },
    { state: 'empty', shows: 'empty', Draw: () => <Working steps={[]} /> },
    { state: 'failing', shows: 'failing', Draw: () => <Working steps={failed} /> },
    { state: 'overflowing', shows: 'overflowing', Draw: () => <Working steps={long} /> },
  ]),
  storiesOf(
    'Caution and warnings',
    [
      {
        state: 'typical, caution',
        shows: 'typical',
        Draw: () => <Caution text="Figures inform; they approve nothing." />,
      },
      {
        state: 'typical, warnings',
        shows: 'typical',
        Draw: () => <Warnings warnings={['The last reading is 190 days old.', 'A paper is missing.']} />,
      },
      {
        state: 'empty',
        shows: 'empty',
        Draw: () => (
          <>
            <Caution text={undefined} />
            <Warnings warnings={[]} />
          </>
        ),
      },
      {
        state: 'overflowing',
        shows: 'overflowing',
        Draw: () => <Warnings warnings={['The last reading is old. '.repeat(40), 'w'.repeat(140)]} />,
      },
    ],
    { failing: 'A warning is what failed.' },
  ),
];
