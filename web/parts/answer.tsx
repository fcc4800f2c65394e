import type { Span } from '../../sheets/model.ts';

/** The answer as one sentence, its decisive figures in the accent; under it one line of why. */
export function Answer({
  answer,
  because,
  level = 1,
}: {
  answer: readonly Span[];
  because?: string;
  level?: 1 | 2 | undefined;
}) {
  const Say = level === 1 ? 'h1' : 'h2';
  return (
    <>
      <Say className="say">
        {answer.map((span, i) =>
          // biome-ignore lint/suspicious/noArrayIndexKey: spans of one sentence never move
          span.figure ? <em key={i}>{span.text}</em> : <span key={i}>{span.text}</span>,
        )}
      </Say>
      {because ? <p className="because">{because}</p> : null}
    </>
  );
}
