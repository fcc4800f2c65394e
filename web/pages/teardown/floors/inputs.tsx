import { useField, useTyped } from '../../../parts/write/context.tsx';
import { listOf, type Path, textOf } from '../../../parts/write/json.ts';
import { Placed } from '../../../parts/write/placed.tsx';
import { dashed } from '../maps/fields.tsx';

const DAYS = ['Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat', 'Sun'];

/** A time of day, 07:30. */
export function ClockIn({ path, label }: { path: Path; label: string }) {
  const f = useField(path);
  return (
    <Placed place={f.place} label={label} problems={f.problems}>
      {(ids) => (
        <input
          {...ids}
          type="time"
          value={textOf(f.value)}
          onBlur={f.leave}
          onChange={(e) => f.put(e.target.value === '' ? undefined : e.target.value)}
        />
      )}
    </Placed>
  );
}

/** Days of the week, Monday first. */
export function WeekdaysIn({ path }: { path: Path }) {
  const f = useField(path, true);
  const on = new Set(listOf(f.value));
  return (
    <fieldset className="weekdays" data-place={f.place} tabIndex={-1}>
      <legend className="label">Days</legend>
      {DAYS.map((d, i) => (
        <label className="choice" key={d}>
          <input
            type="checkbox"
            checked={on.has(i + 1)}
            onChange={(e) => {
              const next = new Set(on);
              if (e.target.checked) next.add(i + 1);
              else next.delete(i + 1);
              f.put([...next].sort());
            }}
          />
          {d}
        </label>
      ))}
      {f.problems.length ? <span className="wrong">{f.problems.map((p) => p.says).join(' ')}</span> : null}
    </fieldset>
  );
}

/** Skills divided by commas: sheet-metal, jig. */
export function SkillsIn({ path }: { path: Path }) {
  const f = useField(path, true);
  const typed = useTyped(
    listOf(f.value).map(textOf).join(', '),
    (t) =>
      f.put(
        t
          .split(',')
          .map((s) => dashed(s))
          .filter((s) => s !== ''),
      ),
    f.leave,
  );
  return (
    <Placed place={f.place} label="Skills" problems={f.problems} hint="Divided by commas: sheet-metal, jig, ndt">
      {(ids) => <input {...ids} {...typed} type="text" autoComplete="off" maxLength={400} />}
    </Placed>
  );
}
