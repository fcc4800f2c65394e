import type { ComponentType } from 'react';
import { ServerSaidNo } from '../../../api/client.ts';
import { Input } from '../../../parts/field.tsx';
import { storiesOf } from '../../../parts/story.ts';
import { choices, longChoices, noChoices } from '../../../testing/choices.ts';
import { Given, Opened } from '../../../testing/given.tsx';
import { RateChooser } from '../rate-chooser.tsx';
import { AccomplishedForm } from './accomplished-form.tsx';
import { AlternativeForm } from './alternative-form.tsx';
import { EntryFormView } from './entry-form.tsx';
import { EntryForms } from './entry-forms.tsx';
import { ListCheckedForm } from './list-checked-form.tsx';
import { PaperFoundForm } from './paper-found-form.tsx';
import { PermitForm } from './permit-form.tsx';
import type { EntryFormProps } from './props.ts';
import { ReadingForm } from './reading-form.tsx';
import { SeenForm } from './seen-form.tsx';

const nothing = () => undefined;
const draw = (Form: ComponentType<EntryFormProps>, given: EntryFormProps['choices']) => () => (
  <Given>
    <Opened>
      <Form shop="own" aircraft="aircraft:1" choices={given} />
    </Opened>
  </Given>
);
const FRAME = 'What is refused stands in the frame of every such form; the part Entry form shows it.';
const form = (part: string, Form: ComponentType<EntryFormProps>) =>
  storiesOf(
    part,
    [
      { state: 'typical', shows: 'typical', Draw: draw(Form, choices) },
      { state: 'empty, nothing to choose from', shows: 'empty', Draw: draw(Form, noChoices) },
      { state: 'overflowing', shows: 'overflowing', Draw: draw(Form, longChoices) },
    ],
    { failing: FRAME },
  );
const Frame = ({ said = '', failed = null, busy = false, title = 'A reading' }) => (
  <Opened>
    <EntryFormView
      title={title}
      button="Write the reading"
      said={said}
      failed={failed}
      busy={busy}
      change={nothing}
      send={nothing}
    >
      <Input label="Total" unit="h" name="total" />
    </EntryFormView>
  </Opened>
);
const refused = new ServerSaidNo(
  {
    code: 'foundation.not-a-day',
    given: '"31.02.2019"',
    allowed: 'a day as YYYY-MM-DD from 1900-01-01 to 2199-12-31',
    remedy: 'Correct the date',
  },
  422,
);
export default [
  storiesOf('Entry form', [
    { state: 'typical, written', shows: 'typical', Draw: () => <Frame said="Written to the log." /> },
    { state: 'typical, being written', shows: 'typical', Draw: () => <Frame busy /> },
    { state: 'empty', shows: 'empty', Draw: () => <Frame /> },
    { state: 'failing', shows: 'failing', Draw: () => <Frame failed={refused as never} /> },
    {
      state: 'overflowing',
      shows: 'overflowing',
      Draw: () => <Frame title={'A reading of the meter '.repeat(12)} said={'Written to the log. '.repeat(12)} />,
    },
  ]),
  form('Entry form, reading', ReadingForm),
  form('Entry form, seen', SeenForm),
  form('Entry form, accomplished', AccomplishedForm),
  form('Entry form, alternative', AlternativeForm),
  form('Entry form, permit', PermitForm),
  form('Entry form, paper found', PaperFoundForm),
  form('Entry form, list checked', ListCheckedForm),
  storiesOf(
    'Add to the record',
    [
      {
        state: 'typical',
        shows: 'typical',
        Draw: () => <EntryForms shop="own" aircraft="aircraft:1" choices={choices} />,
      },
      {
        state: 'empty',
        shows: 'empty',
        Draw: () => <EntryForms shop="own" aircraft="aircraft:1" choices={undefined} />,
      },
    ],
    { failing: FRAME, overflowing: 'It stands folded; each form has its own stories.' },
  ),
  storiesOf(
    'Flying rate',
    [
      { state: 'typical', shows: 'typical', Draw: () => <RateChooser rate="50" /> },
      { state: 'empty', shows: 'empty', Draw: () => <RateChooser rate="" /> },
    ],
    { failing: 'It asks nothing of the server.', overflowing: 'Its rates are always the same.' },
  ),
];
