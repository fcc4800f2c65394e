import { useAsked } from '../../parts/basis/asking.tsx';

/** Which floor the calendar is of, where a shop has several. */
export function OnFloor({ floors }: { floors: readonly { readonly name: string; readonly title: string }[] }) {
  const asked = useAsked();
  const value = asked.of('floor');
  const strange = value !== '' && !floors.some((f) => f.name === value);
  return (
    <label className="choice wraps">
      On the floor&ensp;
      <select value={value} onChange={(e) => asked.ask('floor', e.target.value)}>
        <option value="">that most jobs name</option>
        {strange ? <option value={value}>{value}</option> : null}
        {floors.map((f) => (
          <option key={f.name} value={f.name}>
            {f.title}
          </option>
        ))}
      </select>
    </label>
  );
}
