import { storiesOf } from '../../../parts/story.ts';
import { growthChoices, growthDocument, growthPicture, longGrowth, noGrowthChoices } from '../../../testing/basis.ts';
import { InForm, wrong } from '../../../testing/in-form.tsx';
import { GrowthChoicesContext } from './choices.ts';
import { emptyGrowth, LOADINGS } from './empty.ts';
import { GrowthFields } from './growth-fields.tsx';
import { LoadingFields } from './loading-fields.tsx';

type Problems = ReturnType<typeof wrong>[];
const whole =
  (document: unknown, choices = growthChoices, problems: Problems = [], picture = growthPicture) =>
  () => (
    <InForm document={document} problems={problems} picture={picture}>
      <GrowthChoicesContext value={choices}>
        <GrowthFields />
      </GrowthChoicesContext>
    </InForm>
  );
const works =
  (loading: unknown, choices = growthChoices, problems: Problems = []) =>
  () => (
    <InForm document={{ loading }} problems={problems}>
      <GrowthChoicesContext value={choices}>
        <LoadingFields />
      </GrowthChoicesContext>
    </InForm>
  );

export default [
  storiesOf('Growth, the document', [
    { state: 'typical', shows: 'typical', Draw: whole(growthDocument) },
    { state: 'empty', shows: 'empty', Draw: whole(emptyGrowth(), noGrowthChoices, [], null) },
    {
      state: 'failing',
      shows: 'failing',
      Draw: whole(growthDocument, growthChoices, [
        wrong('geometry.diameter_mm', '80. Correct it: less than the width.'),
        wrong('first_flaw.c_mm', '"small". Correct it: a number.'),
      ]),
    },
    { state: 'overflowing', shows: 'overflowing', Draw: whole(longGrowth, growthChoices, [], null) },
  ]),
  storiesOf('Growth, what works the crack', [
    { state: 'typical', shows: 'typical', Draw: works(growthDocument.loading) },
    { state: 'typical, one cycle', shows: 'typical', Draw: works({ ...LOADINGS.constant, max_MPa: 90, min_MPa: 4 }) },
    {
      state: 'typical, a sequence',
      shows: 'typical',
      Draw: works({
        ...LOADINGS.sequence,
        cycles_MPa: [
          [90, 4],
          [60, 10],
        ],
        hours: 2,
      }),
    },
    { state: 'empty, no usage document is kept', shows: 'empty', Draw: works(LOADINGS.usage_basis, noGrowthChoices) },
    {
      state: 'failing',
      shows: 'failing',
      Draw: works(growthDocument.loading, growthChoices, [wrong('loading.mix.1.share', '7. Correct it: at most 1.')]),
    },
    { state: 'overflowing', shows: 'overflowing', Draw: works(longGrowth.loading) },
  ]),
];
