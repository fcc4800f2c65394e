import { useField, useTyped } from '../../../parts/write/context.tsx';
import { ChoiceIn, FigureIn, NamesIn } from '../../../parts/write/inputs.tsx';
import { type Path, textOf } from '../../../parts/write/json.ts';
import { Placed } from '../../../parts/write/placed.tsx';
import { FACES } from './choices.ts';

/** A short word as maps and floors use it: "Sheet metal" becomes sheet-metal. */
export const dashed = (text: string): string =>
  text
    .normalize('NFKD')
    .toLowerCase()
    .replaceAll(/\p{M}/gu, '')
    .replaceAll(/[^a-z0-9]+/g, '-')
    .replaceAll(/^[^a-z]+|-+$/g, '')
    .slice(0, 60);

/** A short word that other documents name. */
export function ShortIn({ path, label, hint }: { path: Path; label: string; hint?: string }) {
  const f = useField(path);
  const typed = useTyped(textOf(f.value), (t) => f.put(t.trim() === '' ? undefined : dashed(t) || t), f.leave);
  return (
    <Placed place={f.place} label={label} problems={f.problems} hint={hint}>
      {(ids) => <input {...ids} {...typed} type="text" autoComplete="off" maxLength={60} />}
    </Placed>
  );
}

/** Who does it, with what, and how the wing must lie. */
export function HandsIn({ path }: { path: Path }) {
  return (
    <>
      <FigureIn path={[...path, 'persons']} label="Persons" hint="One, where nothing stands here" />
      <ShortIn path={[...path, 'skill']} label="Skill" hint="As the floor names it: sheet-metal" />
      <ChoiceIn path={[...path, 'face']} label="The wing lies" options={FACES} empty="any" />
      <NamesIn path={[...path, 'tools']} label="Tools" />
    </>
  );
}

/** Yes or no; no is no field. */
export function YesIn({ path, label, hint }: { path: Path; label: string; hint?: string }) {
  const f = useField(path);
  return (
    <div className="field">
      <label className="choice long">
        <input
          type="checkbox"
          checked={f.value === true}
          data-place={f.place}
          onChange={(e) => f.put(e.target.checked ? true : undefined)}
        />
        {label}
      </label>
      {hint ? <span className="hint">{hint}</span> : null}
    </div>
  );
}
