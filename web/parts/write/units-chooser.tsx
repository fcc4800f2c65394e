import { chooseUnits, type Units, useUnits } from './units.ts';

const CHOICES: readonly { readonly value: Units; readonly text: string }[] = [
  { value: 'mm', text: 'mm and MPa' },
  { value: 'inch', text: 'inch and ksi' },
];

/** Lengths and stresses in the reader's units: chosen once, kept by this browser. */
export function UnitsChooser() {
  const units = useUnits();
  return (
    <label className="choice">
      Lengths and stresses in&ensp;
      <select value={units} onChange={(e) => chooseUnits(e.target.value as Units)}>
        {CHOICES.map((c) => (
          <option key={c.value} value={c.value}>
            {c.text}
          </option>
        ))}
      </select>
    </label>
  );
}
