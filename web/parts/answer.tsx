import type { Sheet, Span } from '../../sheets/model.ts';
import { To } from './to.tsx';

/** The answer as one sentence, its decisive figures in the accent; under it one line of why. */
export function Answer({
  answer,
  because,
  see,
  level = 1,
}: {
  answer: readonly Span[];
  because?: string;
  see?: Sheet['see'] | undefined;
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
      {because ? (
        <p className="because">
          {because}
          {see ? (
            <>
              {' '}
              <To href={see.href}>{see.text}</To>.
            </>
          ) : null}
        </p>
      ) : null}
    </>
  );
}
