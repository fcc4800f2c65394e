import { useBasisPicture } from '../../../parts/basis/picture.ts';
import { Picture } from '../../../parts/picture.tsx';
import { useForm } from '../../../parts/write/context.tsx';
import { FigureOf } from '../../../parts/write/figure-of.tsx';
import { ChoiceIn, TextIn, WordIn } from '../../../parts/write/inputs.tsx';
import { at, listOf, tableOf } from '../../../parts/write/json.ts';
import { OwnPart } from '../../../parts/write/own-part.tsx';
import { PasteTable } from '../../../parts/write/paste-table.tsx';
import { RowsOf } from '../../../parts/write/rows-of.tsx';
import { NO_SOURCE, SourceIn } from '../../../parts/write/source-in.tsx';
import { TableOf } from '../../../parts/write/table-of.tsx';
import { nameIn, namesOf, unitWord, useUnits } from '../../../parts/write/units.ts';
import { WrongAt } from '../../../parts/write/wrong-at.tsx';
import { useChoices } from './choices.ts';
import { asShape, SHAPES, shapeOf } from './shapes.ts';

const G = ['geometry'] as const;
const LABELS: Readonly<Record<string, { readonly label: string; readonly hint?: string }>> = {
  width_mm: { label: 'Width of the plate', hint: 'Whole width' },
  thickness_mm: { label: 'Thickness' },
  diameter_mm: { label: 'Diameter of the hole' },
  edge_distance_mm: { label: 'Middle of the hole to the near edge' },
  bearing_ratio: {
    label: 'Bearing ratio',
    hint: 'Pin load over diameter and thickness, as a share of the stress; empty: open hole',
  },
  bending_ratio: { label: 'Bending ratio', hint: 'Bending at the outer fibre as a share of the tension; empty: none' },
  in_plane_bending_ratio: { label: 'In-plane bending ratio', hint: 'Empty: none' },
  out_of_plane_bending_ratio: { label: 'Out-of-plane bending ratio', hint: 'Empty: none' },
};
const CRACKS = [
  { value: '1', text: 'one' },
  { value: '2', text: 'two, alike' },
];
const COMPOUNDED = [
  { value: 'product', text: 'multiplied' },
  { value: 'sum', text: '1 + the sum of what each adds' },
];

/** The place, its geometry with a drawing of it, and what the solution does not hold. */
export function PlaceFields() {
  const { draft, send } = useForm();
  const { parts } = useChoices();
  const picture = useBasisPicture();
  const geometry = tableOf(at(draft, G));
  const shape = shapeOf(geometry.shape);
  return (
    <section className="sheet part" aria-labelledby="place" data-place="geometry" tabIndex={-1}>
      <h2 id="place">The place</h2>
      <WrongAt path={G} />
      <div className="fields">
        <TextIn path={['place']} keep label="Place" hint="Part, hole, side" whole />
        <WordIn path={['part']} label="Kind of part it lies in" suggest={parts} hint="As the record names it" />
        <ChoiceIn
          path={[...G, 'shape']}
          label="The crack"
          wide
          options={SHAPES}
          choose={(v) => send({ does: 'put', path: G, value: asShape(geometry, v, namesOf) })}
        />
        {(shape?.fields ?? []).map((f) =>
          f === 'cracks' ? (
            <ChoiceIn
              key={f}
              path={[...G, 'cracks']}
              label="Cracks at the hole"
              options={CRACKS}
              choose={(v) => send({ does: 'put', path: [...G, 'cracks'], value: Number(v) })}
            />
          ) : (
            <FigureOf key={f} path={[...G, f]} {...LABELS[f]!} />
          ),
        )}
      </div>
      {picture ? (
        <div className="shape">
          <Picture block={{ block: 'picture', title: picture.title, scene: picture }} level={3} />
        </div>
      ) : (
        <p className="empty">It is drawn here, to scale, as soon as its lengths are filled in.</p>
      )}
      {geometry.shape === 'own_table' ? <OwnFactors /> : null}
      <RowsOf
        path={['factors']}
        title="Boundaries that the form does not hold"
        add="Another boundary raises the stress intensity"
        one="boundary"
        item={{ name: '', from: NO_SOURCE }}
      >
        {(row) => (
          <>
            <TextIn path={[...row, 'name']} keep label="Boundary" />
            <FigureOf path={[...row, 'value']} label="Factor on K" />
            <SourceIn path={[...row, 'from']} of="this factor" />
          </>
        )}
      </RowsOf>
      {listOf(draft.factors).length > 1 ? (
        <div className="fields">
          <ChoiceIn path={['compounded']} label="Together they are" options={COMPOUNDED} empty="multiplied" />
        </div>
      ) : null}
      <OwnPart
        title="Stress at limit load"
        path={['limit_stress']}
        fresh={{ from: NO_SOURCE }}
        add="State the stress at limit load"
      >
        <div className="fields">
          <FigureOf path={['limit_stress', 'stress_MPa']} label="Remote stress at limit load" />
        </div>
        <SourceIn path={['limit_stress', 'from']} of="the limit stress" />
      </OwnPart>
    </section>
  );
}

function OwnFactors() {
  const { draft, send } = useForm();
  const field = nameIn('c_mm', useUnits());
  const points = [...G, 'points'];
  return (
    <div className="own">
      <p className="soft">K = σ √(πc) β(c), between the sizes given; beyond them nothing is computed.</p>
      <div className="fields" data-place={points.join('.')} tabIndex={-1}>
        <PasteTable
          label="Paste its table"
          forms={[{ names: ['c', 'β'], say: `Two columns: length c in ${unitWord(field)}, and the factor β.` }]}
          take={(rows) =>
            send({ does: 'put', path: points, value: rows.map(([c, beta]) => ({ [field]: c!, beta: beta! })) })
          }
        />
      </div>
      <TableOf
        path={points}
        title="Geometry factors"
        columns={[
          { field: 'c_mm', title: 'Length c' },
          { field: 'beta', title: 'β' },
        ]}
      />
      {listOf(at(draft, points)).length ? null : (
        <button
          type="button"
          className="quiet add"
          onClick={() => send({ does: 'put', path: points, value: [{}, {}] })}
        >
          Type it row by row
        </button>
      )}
      <SourceIn path={[...G, 'from']} of="the geometry factors" />
    </div>
  );
}
