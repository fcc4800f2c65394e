import type { Span } from '../../sheets/model.ts';

/** The answer as one sentence, its decisive figures in the accent; under it one line of why. */
export function Answer({ answer, because }: { answer: readonly Span[]; because?: string }) {
  return (
    <>
      <h1 className="say">
        {answer.map((span, i) =>
          // biome-ignore lint/suspicious/noArrayIndexKey: spans of one sentence never move
          span.figure ? <em key={i}>{span.text}</em> : <span key={i}>{span.text}</span>,
        )}
      </h1>
      {because ? <p className="because">{because}</p> : null}
    </>
  );
}
