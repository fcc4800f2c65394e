import { useForm } from '../../../parts/write/context.tsx';
import { at, listOf, type Path } from '../../../parts/write/json.ts';
import { PasteTable } from '../../../parts/write/paste-table.tsx';
import { TableOf } from '../../../parts/write/table-of.tsx';
import { nameIn, unitWord, useUnits } from '../../../parts/write/units.ts';

/** Derived gust velocities and how often each is passed; up and down alike. */
export function GustsIn({ path, of }: { path: Path; of: string }) {
  const { draft, send } = useForm();
  const field = nameIn('velocity_m_per_s', useUnits());
  const unit = unitWord(field);
  const levels = [...path, 'levels'];
  return (
    <>
      <p className="soft">
        Derived gust velocities, up and down alike; the discrete gust formula of 14 CFR 23.341 makes load factors of
        them.
      </p>
      <div className="fields" data-place={levels.join('.')} tabIndex={-1}>
        <PasteTable
          label="Paste its table"
          forms={[
            { names: ['velocity', 'times'], say: `Two columns: velocity in ${unit}, and how often it is passed.` },
          ]}
          take={(rows) =>
            send({ does: 'put', path: levels, value: rows.map(([v, times]) => ({ [field]: v!, times: times! })) })
          }
        />
      </div>
      <TableOf
        path={levels}
        title={`Gusts, ${of}`}
        columns={[
          { field: 'velocity_m_per_s', title: 'Velocity' },
          { field: 'times', title: 'Times' },
        ]}
      />
      {listOf(at(draft, levels)).length ? null : (
        <button
          type="button"
          className="quiet add"
          onClick={() => send({ does: 'put', path: levels, value: [{}, {}] })}
        >
          Type it row by row<span className="hidden-text">: {of}</span>
        </button>
      )}
    </>
  );
}
