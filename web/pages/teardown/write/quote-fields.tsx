import { useId } from 'react';
import { useForm } from '../../../parts/write/context.tsx';
import { FigureIn, TextIn } from '../../../parts/write/inputs.tsx';
import { at, type Path, tableOf, textOf } from '../../../parts/write/json.ts';
import { MoneyIn } from '../../../parts/write/money-in.tsx';
import { OwnPart } from '../../../parts/write/own-part.tsx';
import { RowsOf } from '../../../parts/write/rows-of.tsx';
import { useChoices } from './choices.ts';

const Q = ['quote'] as const;
/** Every quote says how long it is valid and above which sum the owner is called; neither is guessed. */
const NEW_QUOTE = { excluded: [] };

function Range({ path, title, add, currency }: { path: Path; title: string; add: string; currency: string }) {
  return (
    <OwnPart title={title} path={path} fresh={{}} add={add}>
      <div className="fields">
        <MoneyIn path={[...path, 'low']} label="At least" unit={currency} />
        <MoneyIn path={[...path, 'high']} label="At most" unit={currency} />
      </div>
    </OwnPart>
  );
}

/** On what terms it is quoted. */
export function QuoteFields() {
  const { draft } = useForm();
  const { floors } = useChoices();
  const title = useId();
  const floor = tableOf(at(draft, ['floor']));
  const kept = floors.find((f) => f.name === floor.kept);
  const currency = kept ? (kept.currency ?? '') : textOf(floor.currency);
  return (
    <section className="sheet part" aria-labelledby={title}>
      <h2 id={title}>The quote</h2>
      <p className="soft">
        A range, not a point: hours and days come from the plan and the floor. A quote needs a floor.
      </p>
      <OwnPart title="" path={Q} fresh={NEW_QUOTE} add="Quote it">
        <div className="fields">
          <TextIn path={[...Q, 'owner']} label="For" hint="The owner, as the paper names them" />
          <TextIn path={[...Q, 'registration']} label="Registration" hint="Empty: that of the aircraft" />
          <FigureIn path={[...Q, 'valid_days']} label="Valid for" unit="days" />
          <MoneyIn
            path={[...Q, 'stop_and_call_cents']}
            label="Stop and call above"
            unit={currency}
            hint="Before the sum passes this, the owner is asked"
          />
        </div>
        <Range path={[...Q, 'freight_cents']} title="Freight" add="Name freight" currency={currency} />
        <Range path={[...Q, 'paint_cents']} title="Paint" add="Name paint" currency={currency} />
        <RowsOf path={[...Q, 'further']} title="Further sums" add="Add a sum of others" one="sum" item={{ name: '' }}>
          {(row) => (
            <>
              <TextIn path={[...row, 'name']} keep label="What for" />
              <MoneyIn path={[...row, 'low_cents']} label="At least" unit={currency} />
              <MoneyIn path={[...row, 'high_cents']} label="At most" unit={currency} />
            </>
          )}
        </RowsOf>
        <RowsOf
          path={[...Q, 'excluded']}
          title="Not in the price"
          add="Say what is not in the price"
          one="thing"
          item=""
        >
          {(row) => <TextIn path={row} keep label="What is not in the price" />}
        </RowsOf>
      </OwnPart>
    </section>
  );
}
