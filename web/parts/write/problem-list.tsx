import { focusPlace } from './focus-place.ts';
import type { Problem } from './problem.ts';

/** What the document still lacks, by field; choosing one moves to its field. */
export function ProblemList({
  problems,
  touch,
  inWords,
}: {
  problems: readonly Problem[];
  touch: (place: string) => void;
  /** A place of the document as a person would say it. */
  inWords: (path: string) => string;
}) {
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
              {inWords(p.path)}
            </button>{' '}
            <span>{p.says}</span>
          </li>
        ))}
      </ul>
    </section>
  );
}
