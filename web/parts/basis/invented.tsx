import { useField } from '../write/context.tsx';

/** Made up for demonstration: the mark goes with the document to every page that rests on it. */
export function Invented() {
  const f = useField(['invented']);
  return (
    <div className="field invented-choice">
      <label className="choice">
        <input
          type="checkbox"
          checked={f.value === true}
          data-place="invented"
          onChange={(e) => f.put(e.target.checked ? true : undefined)}
        />
        Made up for demonstration
      </label>
    </div>
  );
}
