import { storiesOf } from '../../../parts/story.ts';
import { ActionFields } from './action-fields.tsx';
import { ErrorPlace } from './expression-in.tsx';
import { RuleFields } from './rule-fields.tsx';
import { LONG, RULE, Written } from './testing.tsx';

const EMPTY = {
  issue: 1,
  affects: {},
  actions: [{ id: 'action_1', does: 'inspect', missing_papers: 'bounds' }],
  cases: [],
};
const wrong = (path: string, says: string, position?: number) => ({
  path,
  says,
  missing: false,
  ...(position ? { position } : {}),
});

const rule =
  (document: Parameters<typeof Written>[0]['document'], problems: ReturnType<typeof wrong>[] = []) =>
  () => (
    <Written document={document} problems={problems}>
      {() => <RuleFields />}
    </Written>
  );
const action =
  (document: Parameters<typeof Written>[0]['document'], problems: ReturnType<typeof wrong>[] = []) =>
  () => (
    <Written document={document} problems={problems}>
      {() => <ActionFields index={0} />}
    </Written>
  );
const NAMELESS = 'actions.0.counts.expression';

export default [
  storiesOf('Directive, the rule', [
    { state: 'typical', shows: 'typical', Draw: rule(RULE) },
    { state: 'empty', shows: 'empty', Draw: rule(EMPTY) },
    {
      state: 'failing',
      shows: 'failing',
      Draw: rule(RULE, [wrong('number', 'Fill it in.'), wrong('issued', 'Fill it in: a day.')]),
    },
    {
      state: 'overflowing',
      shows: 'overflowing',
      Draw: rule({
        ...EMPTY,
        number: LONG,
        title: LONG,
        affects: { models: [{ model: LONG, serials: [{ only: [LONG] }] }] },
      }),
    },
  ]),
  storiesOf('Directive, an action', [
    { state: 'typical', shows: 'typical', Draw: action(RULE) },
    { state: 'empty', shows: 'empty', Draw: action(EMPTY) },
    {
      state: 'failing',
      shows: 'failing',
      Draw: action(RULE, [
        wrong(NAMELESS, 'place 18: no such fact `landings.tows`. Correct the formula at this place.', 18),
        wrong('actions.0.first.first_of.0.counted', 'Fill it in: a number.'),
        wrong('actions.0.looks_at', '"Sparren 7!" must be a short word. Correct it.'),
      ]),
    },
    {
      state: 'overflowing',
      shows: 'overflowing',
      Draw: action({ ...EMPTY, actions: [{ id: 'action_1', title: LONG, method: LONG, looks_at: LONG }] }),
    },
  ]),
  storiesOf(
    'Directive, place of an error',
    [
      { state: 'failing', shows: 'failing', Draw: () => <ErrorPlace text="landings.tows" position={10} /> },
      { state: 'empty', shows: 'empty', Draw: () => <ErrorPlace text="landings.tow" position={undefined} /> },
      {
        state: 'overflowing',
        shows: 'overflowing',
        Draw: () => <ErrorPlace text={`${'landings.total + '.repeat(12)}landings.tows`} position={205} />,
      },
    ],
    { typical: 'It stands only where a formula does not read.' },
  ),
];
