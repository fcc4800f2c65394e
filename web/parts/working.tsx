import type { ShownStep } from '../../sheets/model.ts';
import { To } from './to.tsx';

const METHODS = ['record', 'directive', 'outlook', 'usage', 'growth'] as const;

/** The steps behind a figure, down to the entries of the log. */
export function Working({ steps, title = 'Working' }: { steps: readonly ShownStep[]; title?: string }) {
  if (steps.length === 0) return <p className="empty">No working was kept for this figure.</p>;
  return (
    <div className="scrolls">
      <table>
        <caption className="hidden-text">{title}</caption>
        <thead>
          <tr>
            {['Symbol', 'Meaning', 'Formula', 'Value', 'Source', 'Entries'].map((h) => (
              <th key={h} scope="col" className={h === 'Value' ? 'n' : undefined}>
                <span className="plain-head">{h}</span>
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {steps.map((s, i) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: steps of one working never move, and a symbol may come twice
            <tr key={i}>
              <th scope="row">{s.symbol}</th>
              <td>{s.meaning}</td>
              <td>{s.formula}</td>
              <td className="n">{s.value}</td>
              <td>{s.source}</td>
              <td>{s.entries.join(', ')}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <p className="hint">
        How it is computed, and where that stops being valid:{' '}
        {METHODS.map((word, i) => (
          <span key={word}>
            {i ? ', ' : ''}
            <To href={`/methods/${word}`}>{word}</To>
          </span>
        ))}
        .
      </p>
    </div>
  );
}
