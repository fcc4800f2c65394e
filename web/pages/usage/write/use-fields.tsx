import { useState } from 'react';
import { useForm } from '../../../parts/write/context.tsx';
import { FigureOf } from '../../../parts/write/figure-of.tsx';
import { shownWord } from '../../../parts/write/figures.ts';
import { addFresh } from '../../../parts/write/focus-place.ts';
import { TextIn, WordIn } from '../../../parts/write/inputs.tsx';
import { at, listOf, tableOf, textOf } from '../../../parts/write/json.ts';
import { WrongAt } from '../../../parts/write/wrong-at.tsx';
import { useChoices } from './choices.ts';
import { LOADS } from './empty.ts';
import { LoadFields } from './load-fields.tsx';

const ADD = [
  { as: 'table', text: 'Add a table of load factors' },
  { as: 'exponential', text: 'Add a formula' },
  { as: 'gust_velocity', text: 'Add gust velocities' },
  { as: 'turbulence', text: 'Add continuous turbulence' },
] as const;

/** One use: how it is flown, and what loads the wing in it. */
export function UseFields({ index }: { index: number }) {
  const { draft, send } = useForm();
  const { uses } = useChoices();
  const path = ['uses', index];
  const use = tableOf(at(draft, path));
  const loads = listOf(use.loads);
  const called = textOf(use.title) || shownWord(use.use);
  const count = listOf(draft.uses).length;
  const id = `use-${index}`;
  const [before] = useState(loads.length);
  return (
    <section className="sheet part" aria-labelledby={id} data-place={path.join('.')} tabIndex={-1}>
      <div className="picture-head">
        <h2 id={id}>
          Use {index + 1}
          {called ? `: ${called}` : ''}
        </h2>
        {count > 1 ? (
          <button type="button" className="quiet" onClick={() => send({ does: 'drop', path })}>
            Take away<span className="hidden-text"> use {index + 1}</span>
          </button>
        ) : null}
      </div>
      <WrongAt path={path} />
      <WrongAt path={[...path, 'loads']} />
      <div className="fields">
        <WordIn path={[...path, 'use']} keep label="Word of use" suggest={uses} hint="As the record names it: tow" />
        <TextIn path={[...path, 'title']} label="In words" />
        <FigureOf
          path={[...path, 'speed_m_per_s']}
          always="speed_kt"
          label="Equivalent airspeed"
          hint="For gusts, and for tables per nautical mile"
        />
        <FigureOf path={[...path, 'density_kg_per_m3']} label="Density of the air" hint="For gust velocities" />
        <FigureOf path={[...path, 'flight_h']} label="Mean length of a flight" unit="h" />
        <FigureOf path={[...path, 'landings_per_flight']} label="Landings a flight" />
      </div>
      {loads.length ? null : (
        <p className="soft">Nothing loads the wing yet. The ground-air-ground cycle comes from the flight itself.</p>
      )}
      {loads.map((_, i) => (
        <LoadFields
          // biome-ignore lint/suspicious/noArrayIndexKey: a load is its place in the document
          key={i}
          path={[...path, 'loads', i]}
          open={i >= before}
          of={`${called || `use ${index + 1}`}, load ${i + 1}`}
        />
      ))}
      <div className="grow" data-place={[...path, 'loads'].join('.')} tabIndex={-1}>
        {ADD.map((a) => (
          <button
            key={a.as}
            type="button"
            className="quiet add"
            onClick={() =>
              addFresh([...path, 'loads', loads.length], () =>
                send({ does: 'add', path: [...path, 'loads'], item: LOADS[a.as]! }),
              )
            }
          >
            {a.text}
            <span className="hidden-text"> to use {index + 1}</span>
          </button>
        ))}
      </div>
    </section>
  );
}
