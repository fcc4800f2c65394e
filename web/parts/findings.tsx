import type { FindingsBlock } from '../../sheets/model.ts';

/** What the papers contradict or leave open, each with what to do and the entries it rests on. */
export function Findings({ block }: { block: FindingsBlock }) {
  return (
    <>
      <h2>{block.title}</h2>
      {block.findings.length === 0 ? (
        <p className="empty">{block.empty}</p>
      ) : (
        <ul className="findings">
          {block.findings.map((f, i) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: one code may come twice with the same text
            <li key={i}>
              <p>
                <strong>{f.text}</strong>
              </p>
              <p>{f.remedy}</p>
              <p className="refs">
                {f.entries.length > 0 ? `Entries ${f.entries.join(', ')}; ` : ''}
                {f.code}
              </p>
            </li>
          ))}
        </ul>
      )}
    </>
  );
}
