import { useId } from 'react';
import { FigureOf } from '../../../parts/write/figure-of.tsx';
import { ChoiceIn } from '../../../parts/write/inputs.tsx';
import { RowsOf } from '../../../parts/write/rows-of.tsx';
import { NO_SOURCE, SourceIn } from '../../../parts/write/source-in.tsx';
import { useMap } from './choices.ts';

/** Old holes on the new part: laid over, measured, before the first hole is drilled. */
export function EdgeFields() {
  const map = useMap();
  const title = useId();
  return (
    <section className="sheet part" aria-labelledby={title} data-place="edge_distances" tabIndex={-1}>
      <h2 id={title}>Edge distances</h2>
      <p className="soft">
        The new part laid over the old holes: the least distance from a hole to its edge, row by row. Less than allowed,
        and the dry pass stops before the first drill.
      </p>
      <RowsOf
        path={['edge_distances']}
        title="Measured rows"
        add="Add a measured row"
        one="row"
        item={{ from: NO_SOURCE }}
      >
        {(row) => (
          <>
            <ChoiceIn
              path={[...row, 'join']}
              label="Row of fasteners"
              options={map.joins.map((j) => ({ value: j.id, text: j.name }))}
            />
            <ChoiceIn
              path={[...row, 'part']}
              label="New part"
              options={map.parts.filter((p) => !p.stays).map((p) => ({ value: p.id, text: p.name }))}
            />
            <FigureOf path={[...row, 'least_mm']} label="Least distance to the edge" />
            <FigureOf path={[...row, 'allowed_mm']} label="Least allowed" hint="Empty: twice the diameter" />
            <SourceIn path={[...row, 'from']} of="the measurement" />
          </>
        )}
      </RowsOf>
    </section>
  );
}
