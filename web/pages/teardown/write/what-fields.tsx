import { useId } from 'react';
import { Invented } from '../../../parts/basis/invented.tsx';
import { useBasisPicture } from '../../../parts/basis/picture.ts';
import { Picture } from '../../../parts/picture.tsx';
import { useField, useForm } from '../../../parts/write/context.tsx';
import { ChoiceIn, DayIn, TextIn } from '../../../parts/write/inputs.tsx';
import { at, isTable, tableOf, textOf } from '../../../parts/write/json.ts';
import { useChoices } from './choices.ts';
import { nameFor, sideFor } from './complete.ts';
import { TargetFields } from './target-fields.tsx';

const SIDES = [
  { value: 'left', text: 'left' },
  { value: 'right', text: 'right' },
  { value: 'both', text: 'both' },
];

/** A kept document by its name, or the one that stands in the job itself. */
function KeptIn({
  of,
  label,
  options,
  none,
}: {
  of: 'map' | 'floor';
  label: string;
  options: readonly { readonly value: string; readonly text: string }[];
  /** What it is without one, where it may be without. */
  none?: string;
}) {
  const { draft, send } = useForm();
  const f = useField([of], true);
  const value = tableOf(at(draft, [of]));
  const own = isTable(f.value) && value.sparwright !== undefined;
  const OWN = ' own';
  return (
    <ChoiceIn
      path={[of]}
      label={label}
      shown={own ? OWN : textOf(value.kept)}
      options={
        own ? [{ value: OWN, text: `${textOf(value.title)}, as it stands in this document` }, ...options] : options
      }
      {...(none === undefined ? {} : { empty: none })}
      choose={(v) => {
        if (v === OWN) return;
        send({ does: 'put', path: [of], value: v ? { kept: v } : of === 'map' ? {} : undefined });
      }}
      hint={options.length || own ? undefined : `None is kept yet`}
    />
  );
}

/** What is asked: which aircraft, which wing, what has to be reached, from which day, on which floor. */
export function WhatFields() {
  const { draft } = useForm();
  const choices = useChoices();
  const picture = useBasisPicture();
  const id = useId();
  const model = choices.aircraft.find((a) => a.id === draft.aircraft)?.model ?? null;
  const fits = (m: { models: readonly string[] }) => model !== null && m.models.includes(model);
  const maps = [...choices.maps.filter(fits), ...choices.maps.filter((m) => !fits(m))];
  const name = nameFor(draft, choices);
  const side = sideFor(draft, choices);
  return (
    <section className="sheet part" aria-labelledby={id}>
      <h2 id={id}>What has to come off</h2>
      <div className="fields">
        <ChoiceIn
          path={['aircraft']}
          label="Aircraft"
          empty="of no aircraft of this shop"
          options={choices.aircraft.map((a) => ({ value: a.id, text: a.registration }))}
        />
        <KeptIn
          of="map"
          label="Structure map"
          options={maps.map((m) => ({
            value: m.name,
            text: `${m.title}${model !== null && !fits(m) ? ' (made for another model)' : ''}`,
          }))}
        />
        <TargetFields />
        <DayIn path={['day']} keep label="First day of work" />
        <KeptIn
          of="floor"
          label="Floor"
          none="none: no days, no price"
          options={choices.floors.map((f) => ({ value: f.name, text: f.title }))}
        />
        <ChoiceIn
          path={['side']}
          label="Side of the wing"
          empty={side ? `as the parts lie: ${side}` : 'as the parts lie'}
          options={SIDES}
        />
        <TextIn
          path={['title']}
          label="Name of the job"
          hint={name ? `Left empty it is "${name}"` : 'It is kept under this name'}
          whole
        />
        <Invented />
      </div>
      {picture ? (
        <div className="wing-in-form">
          <Picture block={{ block: 'picture', title: 'What comes off', scene: picture }} />
        </div>
      ) : null}
    </section>
  );
}
