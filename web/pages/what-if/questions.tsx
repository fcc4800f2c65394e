import type { ReactNode } from 'react';
import type { Question, WhatIfChoices } from '../../api/what-if.ts';
import { Input, Select } from '../../parts/field.tsx';
import { type Values, valuesOf } from '../aircraft/forms/read.ts';

interface Asking {
  readonly choices: WhatIfChoices;
  readonly ask: (question: Question, form: string) => void;
  /** Title of the form whose answer is being computed; empty if none. */
  readonly computing: string;
}
const options = (all: readonly { id: string; text: string }[], first?: { value: string; text: string }) => [
  ...(first ? [first] : []),
  ...all.map((x) => ({ value: x.id, text: x.text })),
];
const uses = (c: WhatIfChoices) => c.uses.map((u) => ({ value: u, text: u.replaceAll('_', ' ') }));

function Asked({
  title,
  button,
  question,
  ask,
  computing,
  children,
}: {
  title: string;
  button: string;
  question: (v: Values) => Question;
  ask: Asking['ask'];
  computing: string;
  children: ReactNode;
}) {
  return (
    <section className="sheet">
      <h2>{title}</h2>
      <form
        aria-label={title}
        onSubmit={(e) => {
          e.preventDefault();
          ask(question(valuesOf(e.currentTarget)), title);
        }}
      >
        <div className="fields">{children}</div>
        <div className="actions">
          <button type="submit">{computing === title ? 'Computing ...' : button}</button>
        </div>
      </form>
    </section>
  );
}

/** Four questions, each a form of its own. */
export function Questions({ choices: c, ask, computing }: Asking) {
  const how = { ask, computing };
  return (
    <div className="ways no-print">
      <Asked
        {...how}
        title="Another flying rate"
        button="Show it at this rate"
        question={(v) => ({ rate_h_per_year: v.number('rate') })}
      >
        <Input label="Hours a year" unit="h" name="rate" type="number" min="0" max="8760" step="1" required />
      </Asked>
      <Asked
        {...how}
        title="Another use from a day"
        button="Show it in this use"
        question={(v) => ({ use: v.text('use'), from: v.text('from'), landings_per_hour: v.number('landings') })}
      >
        <Select label="Use" name="use" options={uses(c)} />
        <Input label="From" name="from" type="date" required value={c.day} />
        <Input
          label="Landings an hour"
          name="landings"
          type="number"
          min="0"
          max="60"
          step="0.1"
          hint="Empty: as the record shows"
        />
      </Asked>
      <Asked
        {...how}
        title="A part moved"
        button="Show it there"
        question={(v) => ({ part: v.text('part'), to: v.text('to') })}
      >
        <Select label="Part" name="part" options={options(c.parts)} />
        <Select
          label="Moves to"
          name="to"
          options={options(c.aircraft, { value: 'shelf', text: 'the shelf' })}
          hint="What sits there now goes to the shelf"
        />
      </Asked>
      {c.gaps.length ? (
        <Asked
          {...how}
          title="A paper found"
          button="Show it with this paper"
          question={(v) => ({
            gap: v.text('gap'),
            use: v.text('use'),
            total_h: v.number('total_h'),
            landings: v.number('landings'),
          })}
        >
          <Select label="Stretch" name="gap" options={options(c.gaps)} />
          <Select
            label="It says the use was"
            name="use"
            options={[{ value: '', text: 'nothing of the use' }, ...uses(c)]}
            value={c.uses[0] ?? ''}
          />
          <Input label="Total at its end" unit="h" name="total_h" type="number" min="0" max="1000000" step="0.01" />
          <Input label="Landings at its end" name="landings" type="number" min="0" step="1" />
        </Asked>
      ) : (
        <section className="sheet">
          <h2>A paper found</h2>
          <p>No stretch of this aircraft is without paper.</p>
        </section>
      )}
    </div>
  );
}
