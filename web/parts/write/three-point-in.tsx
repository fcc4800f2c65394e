import { FigureIn } from './inputs.tsx';
import type { Path } from './json.ts';
import { WrongAt } from './wrong-at.tsx';

/** Least, most likely and longest time, in minutes. */
export function ThreePointIn({ path, of, unit = 'min' }: { path: Path; of: string; unit?: string }) {
  return (
    <fieldset className="three-point" data-place={path.join('.')} tabIndex={-1}>
      <legend>
        {of} <span className="unit">{unit}</span>
      </legend>
      <FigureIn path={[...path, 'low_min']} label="at least" />
      <FigureIn path={[...path, 'likely_min']} label="most likely" />
      <FigureIn path={[...path, 'high_min']} label="at most" />
      <WrongAt path={path} />
    </fieldset>
  );
}
