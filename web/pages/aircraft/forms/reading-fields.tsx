import { Input } from '../../../parts/field.tsx';

/** The figures of a reading: read back by `readingOf`. */
export function ReadingFields({ meters, id = 'meters' }: { meters: readonly string[]; id?: string }) {
  return (
    <>
      <Input label="Total in the book" unit="h" name="total_h" type="number" step="0.01" min="0" max="1000000" />
      <Input label="Landings" name="landings" type="number" step="1" min="0" />
      <Input label="Meter" name="meter" hint="Only with what it shows" list={id} />
      <Input label="Meter shows" unit="h" name="shows_h" type="number" step="0.01" min="0" max="1000000" />
      <datalist id={id}>
        {meters.map((m) => (
          <option key={m} value={m} />
        ))}
      </datalist>
    </>
  );
}
