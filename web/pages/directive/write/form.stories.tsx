import type { Stories } from '../../../parts/story.ts';
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

const stories: Stories = {
  part: 'Form of a directive',
  stories: [
    { state: 'rule, typical', Draw: () => <Written document={RULE}>{() => <RuleFields />}</Written> },
    { state: 'rule, empty', Draw: () => <Written document={EMPTY}>{() => <RuleFields />}</Written> },
    { state: 'action, typical', Draw: () => <Written document={RULE}>{() => <ActionFields index={0} />}</Written> },
    { state: 'action, empty', Draw: () => <Written document={EMPTY}>{() => <ActionFields index={0} />}</Written> },
    {
      state: 'action, failing',
      Draw: () => (
        <Written
          document={RULE}
          problems={[
            wrong(
              'actions.0.counts.expression',
              'place 18: no such fact `landings.tows`. Correct the formula at this place.',
              18,
            ),
            wrong('actions.0.first.first_of.0.counted', 'Fill it in: a number.'),
            wrong('actions.0.looks_at', '"Sparren 7!" must be a short word. Correct it.'),
          ]}
        >
          {() => <ActionFields index={0} />}
        </Written>
      ),
    },
    {
      state: 'action, overflowing',
      Draw: () => (
        <Written document={{ ...EMPTY, actions: [{ id: 'action_1', title: LONG, method: LONG, looks_at: LONG }] }}>
          {() => <ActionFields index={0} />}
        </Written>
      ),
    },
    {
      state: 'place of an error in a long formula',
      Draw: () => <ErrorPlace text={`${'landings.total + '.repeat(12)}landings.tows`} position={205} />,
    },
  ],
};
export default stories;
