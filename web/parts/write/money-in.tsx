import { centsOf, typedMoney } from '../../../sheets/money.ts';
import { useField, useTyped } from './context.tsx';
import { type Path, textOf } from './json.ts';
import { Placed } from './placed.tsx';

/** A sum as it is typed, 1 250.50; whole cents stand in the document. What is no sum stays as typed, and is a problem. */
export function MoneyIn({
  path,
  ...frame
}: {
  path: Path;
  label: string;
  unit?: string | undefined;
  hint?: string | undefined;
  within?: boolean | undefined;
}) {
  const f = useField(path);
  const shown = typeof f.value === 'number' ? typedMoney(f.value) : textOf(f.value);
  const typed = useTyped(shown, (t) => f.put(t.trim() === '' ? undefined : (centsOf(t) ?? t)), f.leave);
  return (
    <Placed {...frame} place={f.place} problems={f.problems}>
      {(ids) => (
        <input
          {...ids}
          {...typed}
          type="text"
          inputMode="decimal"
          autoComplete="off"
          maxLength={20}
          className="figure"
        />
      )}
    </Placed>
  );
}
