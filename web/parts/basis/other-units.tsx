import { useForm } from '../write/context.tsx';
import { tableOf } from '../write/json.ts';
import { inOtherUnits, readAs, useUnits } from '../write/units.ts';

/** Figures that were written in the units not chosen now: they keep them, unless they were meant otherwise. */
export function OtherUnits() {
  const { draft, send } = useForm();
  const units = useUnits();
  const count = inOtherUnits(draft, units);
  if (count === 0) return null;
  const [chosen, written] = units === 'inch' ? ['inch and ksi', 'mm and MPa'] : ['mm and MPa', 'inch and ksi'];
  return (
    <p className="other-units soft">
      {count === 1 ? '1 figure stands' : `${count} figures stand`} in {written}, as{' '}
      {count === 1 ? 'it was' : 'they were'} written; each field names its unit.{' '}
      <button
        type="button"
        className="quiet"
        onClick={() => send({ does: 'open', draft: tableOf(readAs(draft, units)) })}
      >
        Read {count === 1 ? 'it' : 'them'} as {chosen}: the unit was mistaken
      </button>
    </p>
  );
}
