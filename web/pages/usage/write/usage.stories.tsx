import { storiesOf } from '../../../parts/story.ts';
import { longUsage, noUsageChoices, usageChoices, usageDocument } from '../../../testing/basis.ts';
import { Opened } from '../../../testing/given.tsx';
import { InForm, wrong } from '../../../testing/in-form.tsx';
import { UsageChoicesContext } from './choices.ts';
import { emptyUsage, LOADS } from './empty.ts';
import { LoadFields } from './load-fields.tsx';
import { UsageFields } from './usage-fields.tsx';

type Problems = ReturnType<typeof wrong>[];
const whole =
  (document: unknown, choices = usageChoices, problems: Problems = []) =>
  () => (
    <InForm document={document} problems={problems}>
      <UsageChoicesContext value={choices}>
        <UsageFields />
      </UsageChoicesContext>
    </InForm>
  );
const load =
  (of: unknown, problems: Problems = []) =>
  () => (
    <InForm document={{ load: of }} problems={problems}>
      <UsageChoicesContext value={usageChoices}>
        <Opened>
          <LoadFields path={['load']} of="private flying, load 1" open />
        </Opened>
      </UsageChoicesContext>
    </InForm>
  );
const [gusts, manoeuvres, taxi] = usageDocument.uses[0]!.loads;
const turbulence = usageDocument.uses[2]!.loads[0];

export default [
  storiesOf('Usage, the document', [
    { state: 'typical', shows: 'typical', Draw: whole(usageDocument) },
    { state: 'empty', shows: 'empty', Draw: whole(emptyUsage(), noUsageChoices) },
    {
      state: 'failing',
      shows: 'failing',
      Draw: whole(usageDocument, usageChoices, [
        wrong('aeroplane.limit_up', '38. Correct it: at most 15.'),
        wrong('uses.1.use', 'use "private" stands twice. Give one of them another word.'),
        wrong('place.stress.at_1g_MPa', '"forty". Correct it: a number.'),
      ]),
    },
    { state: 'overflowing', shows: 'overflowing', Draw: whole(longUsage) },
  ]),
  storiesOf('Usage, a load', [
    { state: 'typical, a table', shows: 'typical', Draw: load(taxi) },
    { state: 'typical, a formula', shows: 'typical', Draw: load(manoeuvres) },
    { state: 'typical, gust velocities', shows: 'typical', Draw: load(gusts) },
    { state: 'typical, turbulence', shows: 'typical', Draw: load(turbulence) },
    { state: 'empty', shows: 'empty', Draw: load(LOADS.table) },
    {
      state: 'failing',
      shows: 'failing',
      Draw: load(taxi, [wrong('load.up.2', '30 times follow 11. Correct this row.')]),
    },
    { state: 'overflowing', shows: 'overflowing', Draw: load(longUsage.uses[0]!.loads[0]) },
  ]),
];
