import { Area, Field, Input, Select } from './field.tsx';
import { Rows } from './rows.tsx';
import { storiesOf } from './story.ts';

const word = 'Sparrenbefundungsaufzeichnung'.repeat(6);
const USES = [
  { value: 'tow', text: 'tow' },
  { value: 'private', text: 'private' },
];
const line = (name: string) => <Input label="From" unit="year" name={`${name}.from`} type="number" />;
const NO_ASKING = 'It asks nothing; what is refused stands in the form as an error notice, which has its own stories.';
export default [
  storiesOf(
    'Field',
    [
      {
        state: 'typical',
        shows: 'typical',
        Draw: () => (
          <div className="fields">
            <Input label="Total" unit="h" name="total" type="number" value="1204.3" hint="As the paper states it" />
            <Select label="Use" name="use" options={USES} value="tow" />
            <Input label="Done on" name="day" type="date" value="2026-11-25" />
            <Area label="Conditions" name="conditions" hint="Every one of them" />
          </div>
        ),
      },
      {
        state: 'empty',
        shows: 'empty',
        Draw: () => (
          <div className="fields">
            <Input label="Total" name="total" />
            <Select label="Use" name="use" options={[]} />
          </div>
        ),
      },
      {
        state: 'overflowing',
        shows: 'overflowing',
        Draw: () => (
          <div className="fields">
            <Input label={word} unit="landings" name="long" value={word} hint={word} />
            <Select label="Part" name="part" options={[{ value: 'a', text: word }]} />
            <Field label="In one line" whole>
              {(ids) => <input {...ids} defaultValue={word} />}
            </Field>
          </div>
        ),
      },
    ],
    { failing: NO_ASKING },
  ),
  storiesOf(
    'Rows',
    [
      {
        state: 'typical',
        shows: 'typical',
        Draw: () => (
          <Rows add="Add years" what="years" start={2}>
            {line}
          </Rows>
        ),
      },
      {
        state: 'empty',
        shows: 'empty',
        Draw: () => (
          <Rows add="Add years" what="years">
            {line}
          </Rows>
        ),
      },
      {
        state: 'overflowing',
        shows: 'overflowing',
        Draw: () => (
          <Rows add={`Add ${word}`} what="years" start={14}>
            {line}
          </Rows>
        ),
      },
    ],
    { failing: NO_ASKING },
  ),
];
