import { useId } from 'react';
import { useForm } from '../../../parts/write/context.tsx';
import { ChoiceIn, Select } from '../../../parts/write/inputs.tsx';
import { at, listOf } from '../../../parts/write/json.ts';
import { More } from '../../../parts/write/more.tsx';
import { Placed } from '../../../parts/write/placed.tsx';
import { RowsOf } from '../../../parts/write/rows-of.tsx';
import { useChoices, useMap } from './choices.ts';
import { sideFor } from './complete.ts';

const WANTED = [
  { value: 'wanted', text: 'wanted, whatever the sums say' },
  { value: 'unwanted', text: 'not wanted' },
];

/** A look or a small job: by the sums, wanted, or not. */
function Wanting({ id, name }: { id: string; name: string }) {
  const { draft, send, problems } = useForm();
  const has = (list: string) => listOf(at(draft, [list])).indexOf(id);
  const value = has('wanted') >= 0 ? 'wanted' : has('unwanted') >= 0 ? 'unwanted' : '';
  const set = (list: string, on: boolean) => {
    const rest = listOf(at(draft, [list])).filter((x) => x !== id);
    const made = on ? [...rest, id] : rest;
    send({ does: 'put', path: [list], value: made.length ? made : undefined });
  };
  const place = value ? `${value}.${has(value)}` : `wanted ${id}`;
  return (
    <Placed place={place} label={name} problems={problems.filter((p) => p.path === place)}>
      {(ids) => (
        <Select
          ids={ids}
          value={value}
          options={WANTED}
          empty="as the sums say"
          set={(v) => {
            set('wanted', v === 'wanted');
            set('unwanted', v === 'unwanted');
          }}
        />
      )}
    </Placed>
  );
}

/** Looks and small jobs while it is open, and steps that must be on the plan. */
export function ExtraFields() {
  const { draft } = useForm();
  const map = useMap();
  const choices = useChoices();
  const title = useId();
  const side = String(draft.side ?? sideFor(draft, choices));
  const sides = new Map([...map.parts, ...map.joins].map((x) => [x.id, x.side]));
  const named = [...listOf(draft.wanted), ...listOf(draft.unwanted)];
  const here = (x: { readonly id: string; readonly at: string }) => {
    const own = sides.get(x.at) ?? 'both';
    return named.includes(x.id) || side === '' || side === 'both' || own === 'both' || own === side;
  };
  const offered = [...map.looks, ...map.jobs].filter(here);
  const steps = [
    ...map.parts.filter((p) => !p.stays).map((p) => ({ value: `off:${p.id}`, text: `${p.name} off` })),
    ...map.joins.map((j) => ({ value: `open:${j.id}`, text: `${j.name} open` })),
    ...map.supports.map((s) => ({ value: `support:${s.id}`, text: `${s.name} set up` })),
  ];
  return (
    <section className="sheet part" aria-labelledby={title} data-place="wanted" tabIndex={-1}>
      <h2 id={title}>While it is open</h2>
      <p className="soft">
        What pays is chosen by the sums: chance and cost of a finding now against later. What the shop wants or does not
        want, it says here.
      </p>
      {offered.length ? (
        <More title={`Looks and small jobs on offer: ${offered.length}`} open={named.length > 0}>
          <div className="fields">
            {offered.map((x) => (
              <Wanting key={x.id} id={x.id} name={x.name} />
            ))}
          </div>
        </More>
      ) : (
        <p className="empty">The map holds no looks and no small jobs for this side.</p>
      )}
      <RowsOf path={['also']} title="Steps that must be on the plan" add="Ask for a further step" one="step" item="">
        {(row) => <ChoiceIn path={row} label="Step" options={steps} />}
      </RowsOf>
    </section>
  );
}
