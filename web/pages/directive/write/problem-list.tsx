import type { Problem } from '../../../api/directives.ts';
import { focusPlace } from './focus-place.ts';
import { placeInWords } from './places.ts';

/** What the rule still lacks, by field; choosing one moves to its field. */
export function ProblemList({ problems, touch }: { problems: readonly Problem[]; touch: (place: string) => void }) {
  if (problems.length === 0) return null;
  return (
    <section className="still" aria-labelledby="still">
      <h2 id="still">Still to do</h2>
      <ul className="findings">
        {problems.map((p) => (
          <li key={`${p.path} ${p.says}`}>
            <button
              type="button"
              className="quiet"
              onClick={() => {
                touch(p.path);
                focusPlace(p.path);
              }}
            >
              {placeInWords(p.path)}
            </button>{' '}
            <span>{p.says}</span>
          </li>
        ))}
      </ul>
    </section>
  );
}
