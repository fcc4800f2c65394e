import { FigureOf } from '../../../parts/write/figure-of.tsx';
import { WordIn } from '../../../parts/write/inputs.tsx';
import { OwnPart } from '../../../parts/write/own-part.tsx';
import { RowsOf } from '../../../parts/write/rows-of.tsx';
import { WrongAt } from '../../../parts/write/wrong-at.tsx';
import { useChoices } from './choices.ts';

/** Hours per use, where a document is to answer without an aircraft; on the page of an aircraft the record states them. */
export function HoursFields() {
  const { uses } = useChoices();
  return (
    <section className="sheet part" aria-labelledby="hours">
      <h2 id="hours">Hours flown</h2>
      <WrongAt path={['hours']} />
      <p className="soft">
        On the page of an aircraft its record states them. Here they are of use for a single answer.
      </p>
      <OwnPart title="" path={['hours']} fresh={{ by_use: [{}] }} add="State hours per use here">
        <RowsOf path={['hours', 'by_use']} title="Hours per use" add="Add a use" one="use" item={{}}>
          {(row) => (
            <>
              <WordIn path={[...row, 'use']} keep label="Use" suggest={uses} />
              <FigureOf path={[...row, 'low_h']} label="At least" unit="h" />
              <FigureOf path={[...row, 'high_h']} label="At most" unit="h" />
            </>
          )}
        </RowsOf>
        <OwnPart title="Their sum" path={['hours', 'total']} fresh={{}} add="The papers settle the sum better">
          <div className="fields">
            <FigureOf path={['hours', 'total', 'low_h']} label="At least" unit="h" />
            <FigureOf path={['hours', 'total', 'high_h']} label="At most" unit="h" />
          </div>
        </OwnPart>
      </OwnPart>
    </section>
  );
}
