import type { FindingsBlock } from '../../sheets/model.ts';
import { FindingCode } from './finding-code.tsx';

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
              {f.entries.length > 0 ? <p className="refs">Entries {f.entries.join(', ')}</p> : null}
              <FindingCode code={f.code} />
            </li>
          ))}
        </ul>
      )}
    </>
  );
}
