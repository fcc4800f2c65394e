import { useForm } from '../../../parts/write/context.tsx';
import { FigureOf } from '../../../parts/write/figure-of.tsx';
import { ChoiceIn, TextIn } from '../../../parts/write/inputs.tsx';
import { at, listOf, textOf } from '../../../parts/write/json.ts';
import { PasteTable } from '../../../parts/write/paste-table.tsx';
import { SourceIn } from '../../../parts/write/source-in.tsx';
import { TableOf } from '../../../parts/write/table-of.tsx';
import { nameIn, unitWord, useUnits } from '../../../parts/write/units.ts';
import { WrongAt } from '../../../parts/write/wrong-at.tsx';
import { STRESSES } from './empty.ts';

const AS = [
  { value: 'per_g', text: 'known per g' },
  { value: 'line', text: 'known as a line against load factor' },
  { value: 'unknown', text: 'not known with a source' },
];
const S = ['place', 'stress'] as const;

/** Where the stress is looked at, and what a load factor makes of it there. */
export function StressFields() {
  const { draft, send } = useForm();
  const as = textOf(at(draft, [...S, 'as']));
  return (
    <section className="sheet part" aria-labelledby="place" data-place="place" tabIndex={-1}>
      <h2 id="place">The place, and its stress</h2>
      <WrongAt path={['place']} />
      <WrongAt path={S} />
      <div className="fields" data-place={S.join('.')} tabIndex={-1}>
        <TextIn path={['place', 'name']} keep label="Place" hint="Part, hole, side" whole />
        <ChoiceIn
          path={[...S, 'as']}
          label="The stress there is"
          wide
          options={AS}
          choose={(v) =>
            send({ does: 'put', path: S, value: { ...STRESSES[v], from: at(draft, [...S, 'from']) ?? {} } })
          }
        />
        {as === 'per_g' ? (
          <>
            <FigureOf path={[...S, 'at_1g_MPa']} label="Stress at 1 g in flight" hint="Gross section" />
            <FigureOf path={[...S, 'per_g_MPa']} label="More for each further g" hint="Empty: as at 1 g" />
          </>
        ) : null}
        {as === 'unknown' ? (
          <FigureOf
            path={[...S, 'ground_share']}
            label="Ground stress as a share"
            hint="Of the stress at 1 g in flight: -0.2"
          />
        ) : null}
      </div>
      {as === 'unknown' ? (
        <p className="soft">Then no life is given, in hours or otherwise: only how the uses compare with each other.</p>
      ) : null}
      {as === 'line' ? <Line /> : null}
      {as === 'per_g' || as === 'line' ? (
        <div className="fields">
          <FigureOf path={[...S, 'ground_at_1g_MPa']} label="Stress standing on the ground" hint="Often below zero" />
          <FigureOf
            path={[...S, 'ground_per_g_MPa']}
            label="More for each g on the ground"
            hint="Empty: as it stands"
          />
        </div>
      ) : null}
      <SourceIn path={[...S, 'from']} of="the stress" />
    </section>
  );
}

function Line() {
  const { draft, send } = useForm();
  const field = nameIn('stress_MPa', useUnits());
  const points = [...S, 'points'];
  return (
    <>
      <div className="fields" data-place={points.join('.')} tabIndex={-1}>
        <PasteTable
          label="Paste the line"
          forms={[
            { names: ['load factor', 'stress'], say: `Two columns: load factor, and stress in ${unitWord(field)}.` },
          ]}
          take={(rows) =>
            send({ does: 'put', path: points, value: rows.map(([n, s]) => ({ load_factor: n!, [field]: s! })) })
          }
        />
      </div>
      <TableOf
        path={points}
        title="Stress line"
        columns={[
          { field: 'load_factor', title: 'Load factor' },
          { field: 'stress_MPa', title: 'Stress' },
        ]}
      />
      {listOf(at(draft, points)).length ? null : (
        <button
          type="button"
          className="quiet add"
          onClick={() => send({ does: 'put', path: points, value: [{}, {}] })}
        >
          Type it point by point
        </button>
      )}
    </>
  );
}
