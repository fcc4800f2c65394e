import { today } from '../../api/today.ts';
import { Input, Select } from '../../parts/field.tsx';
import { Rows } from '../../parts/rows.tsx';

const METERS = [
  { value: 'book', text: 'total in the book' },
  { value: 'tachometer', text: 'tachometer' },
  { value: 'engine_running', text: 'engine running meter' },
  { value: 'airborne', text: 'airborne meter' },
];
const USES = ['hire', 'instruction', 'tow', 'survey', 'aerobatic', 'utility', 'private'].map((u) => ({
  value: u,
  text: u,
}));

function Years({ name }: { name: string }) {
  return (
    <>
      <Input
        label="From"
        unit="year"
        name={`${name}.from_year`}
        type="number"
        step="1"
        min="1900"
        max="2199"
        required
      />
      <Input label="To" unit="year" name={`${name}.to_year`} type="number" step="1" min="1900" max="2199" required />
    </>
  );
}

/** An answer of its own: none. Without it an empty list is unknown. */
function None({ name, text }: { name: string; text: string }) {
  return (
    <label className="choice">
      <input type="checkbox" name={name} value="none" />
      {text}
    </label>
  );
}

/** The aircraft and the six questions. */
export function CallQuestions() {
  return (
    <>
      <fieldset>
        <legend>The aircraft</legend>
        <div className="fields">
          <Input label="Registration" name="registration" required />
          <Input label="Type" name="type" required />
          <Input label="Model" name="model" required />
          <Input label="Serial" name="serial" hint="If the caller has it" />
          <Input label="Caller" name="caller" hint="Name, for the paper trail" />
          <Input label="Day of the call" name="day" type="date" required value={today()} max={today()} />
        </div>
      </fieldset>
      <fieldset>
        <legend>1. What is the total now, and on which meter?</legend>
        <div className="fields">
          <Input
            label="Total"
            unit="h"
            name="total_h"
            type="number"
            step="0.01"
            min="0"
            max="1000000"
            hint="Empty: unknown"
          />
          <Select label="Read from" name="meter" options={METERS} />
          <Input label="Landings" name="landings" type="number" step="1" min="0" hint="If they are counted" />
        </div>
      </fieldset>
      <fieldset>
        <legend>2. In which year was it built?</legend>
        <div className="fields">
          <Input
            label="Year built"
            name="built_year"
            type="number"
            step="1"
            min="1900"
            max="2199"
            hint="Empty: unknown"
          />
        </div>
      </fieldset>
      <fieldset>
        <legend>3. Did it ever fly for hire, in a school, as a tug or at other work?</legend>
        <p className="hint">What no one names may have been any use: the worse side counts.</p>
        <None name="no_uses" text="The caller says: none of these" />
        <Rows add="Add years of a use" what="uses">
          {(name) => (
            <>
              <Select label="Use" name={`${name}.use`} options={USES} />
              <Years name={name} />
            </>
          )}
        </Rows>
      </fieldset>
      <fieldset>
        <legend>4. Was a wing ever changed?</legend>
        {[
          { value: 'unknown', text: 'The caller does not know' },
          { value: 'no', text: 'No' },
          { value: 'yes', text: 'Yes' },
        ].map((c) => (
          <label className="choice" key={c.value}>
            <input type="radio" name="wing_changed" value={c.value} defaultChecked={c.value === 'unknown'} />
            {c.text}
          </label>
        ))}
      </fieldset>
      <fieldset>
        <legend>5. Are any books missing?</legend>
        <p className="hint">With no answer, all books count as missing.</p>
        <None name="no_missing_books" text="The caller says: none is missing" />
        <Rows add="Add missing years" what="missing_books">
          {(name) => <Years name={name} />}
        </Rows>
      </fieldset>
      <fieldset>
        <legend>6. Which kits and repairs are on the wing?</legend>
        <div className="fields">
          <Input label="Kits" name="kits" hint="Separated by commas" />
          <None name="no_kits" text="The caller says: no kits" />
          <Input label="Repairs" name="repairs" hint="In the caller's words" />
        </div>
      </fieldset>
    </>
  );
}
