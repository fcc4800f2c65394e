import { useField, useForm, useTyped } from './context.tsx';
import { shownFigure } from './figures.ts';
import { at, type Path, tableOf } from './json.ts';
import { exactFigureOf } from './pasted.ts';
import { Placed } from './placed.tsx';
import { nameIn, standsAs, unitWord, useUnits } from './units.ts';

/**
 * A figure with its unit. It is written under the name that ends in the reader's unit; one that stands there already
 * keeps the unit that it was written in. The place is named as in engine units.
 */
export function FigureOf({
  path,
  within,
  always,
  unit: said,
  ...frame
}: {
  path: Path;
  label: string;
  hint?: string | undefined;
  within?: boolean | undefined;
  /** Written in this unit whatever was chosen: `speed_kt`. */
  always?: string;
  /** Where the name does not say it: h. */
  unit?: string;
}) {
  const { draft, send } = useForm();
  const units = useUnits();
  const field = String(path.at(-1));
  const parent = path.slice(0, -1);
  const name = standsAs(tableOf(at(draft, parent)), field, always ?? nameIn(field, units));
  const f = useField([...parent, name], false, path.join('.'));
  const typed = useTyped(
    shownFigure(f.value),
    (t) => send({ does: 'put', path: [...parent, name], value: t.trim() === '' ? undefined : exactFigureOf(t) }),
    f.leave,
  );
  const unit = said ?? unitWord(name);
  return (
    <Placed {...frame} within={within} {...(unit && !within ? { unit } : {})} place={f.place} problems={f.problems}>
      {(ids) => (
        <input
          {...ids}
          {...typed}
          type="text"
          inputMode="text"
          autoComplete="off"
          maxLength={40}
          className="figure"
          data-unit={unit}
        />
      )}
    </Placed>
  );
}
