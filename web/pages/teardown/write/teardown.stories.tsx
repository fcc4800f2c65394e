import { storiesOf } from '../../../parts/story.ts';
import { InForm, wrong } from '../../../testing/in-form.tsx';
import { jobSteps, longJob, noTeardownChoices, teardownChoices, teardownJob } from '../../../testing/teardown.ts';
import { TeardownChoicesContext } from './choices.ts';
import { emptyJob } from './empty.ts';
import { JobFields } from './job-fields.tsx';

type Problems = ReturnType<typeof wrong>[];
const NOTHING = { aircraft: '', map: '', part: '' };
const whole =
  (document: unknown, choices = teardownChoices, problems: Problems = [], picture = false) =>
  () => (
    <InForm document={document} problems={problems} picture={picture ? jobSteps.scene : null}>
      <TeardownChoicesContext value={choices}>
        <JobFields />
      </TeardownChoicesContext>
    </InForm>
  );

export default storiesOf('Teardown, the job', [
  { state: 'typical', shows: 'typical', Draw: whole(teardownJob, teardownChoices, [], true) },
  { state: 'typical, new', shows: 'typical', Draw: whole(emptyJob({ ...NOTHING, part: 'spar' }, teardownChoices)) },
  {
    state: 'empty, no map is kept',
    shows: 'empty',
    Draw: whole(emptyJob(NOTHING, noTeardownChoices), noTeardownChoices),
  },
  {
    state: 'failing',
    shows: 'failing',
    Draw: whole(teardownJob, teardownChoices, [
      wrong('targets.0.part', 'Choose one.'),
      wrong('quote.stop_and_call_cents', '"much". Correct it: a whole number.'),
      wrong('wanted.0', '"doubler". Correct it.'),
    ]),
  },
  { state: 'overflowing', shows: 'overflowing', Draw: whole(longJob) },
]);
