import { FigureOf } from '../../../parts/write/figure-of.tsx';
import { TextIn, WordIn } from '../../../parts/write/inputs.tsx';
import { RowsOf } from '../../../parts/write/rows-of.tsx';
import { useChoices } from './choices.ts';

/** Hours flown and limits in force, where a document is to answer without an aircraft. */
export function InForceFields() {
  const { uses } = useChoices();
  return (
    <section className="sheet part" aria-labelledby="in-force">
      <h2 id="in-force">Hours flown, limits in force</h2>
      <p className="soft">
        On the page of an aircraft its record and its directives state them. Nothing is ever shown as longer than a
        limit in force.
      </p>
      <RowsOf path={['flown']} title="Hours per use" add="State hours per use here" one="use" item={{}}>
        {(row) => (
          <>
            <WordIn path={[...row, 'use']} keep label="Use" suggest={uses} />
            <FigureOf path={[...row, 'low_h']} label="At least" unit="h" />
            <FigureOf path={[...row, 'high_h']} label="At most" unit="h" />
          </>
        )}
      </RowsOf>
      <RowsOf path={['in_force']} title="Limits in force" add="State a limit in force" one="limit" item={{ name: '' }}>
        {(row) => (
          <>
            <TextIn path={[...row, 'name']} keep label="Directive" />
            <FigureOf path={[...row, 'first_at_h']} label="First look at" unit="h" />
            <FigureOf path={[...row, 'repeat_h']} label="Then every" unit="h" />
            <FigureOf path={[...row, 'left_h']} label="Left" unit="h" hint="Below zero: overdue" />
            <TextIn path={[...row, 'reference']} keep label="Reference" />
          </>
        )}
      </RowsOf>
    </section>
  );
}
