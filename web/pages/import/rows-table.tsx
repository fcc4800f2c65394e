import { useId, useState } from 'react';
import type { Preview, PreviewRow } from '../../api/import.ts';

const SHOWN = 200;

function Verdict({ row }: { row: PreviewRow }) {
  if (row.verdict === 'refused')
    return (
      <span className="standing act">
        refused
        <small>{row.reason}</small>
      </span>
    );
  return (
    <>
      accepted
      {row.warning ? <small>{row.warning}</small> : null}
    </>
  );
}

/** Every row with its number and what becomes of it; the refused ones first to see. */
export function RowsTable({ preview, header }: { preview: Preview; header: readonly string[] }) {
  const { refused } = preview.counts;
  const warned = preview.rows.filter((r) => r.warning !== undefined).length;
  const [which, setWhich] = useState<'all' | 'refused' | 'warned'>(refused ? 'refused' : warned ? 'warned' : 'all');
  const [all, setAll] = useState(false);
  const name = useId();
  const chosen = preview.rows.filter(
    (r) => which === 'all' || (which === 'refused' ? r.verdict === 'refused' : r.warning !== undefined),
  );
  const rows = all ? chosen : chosen.slice(0, SHOWN);
  return (
    <>
      <div className="actions">
        {(['all', 'refused', 'warned'] as const).map((w) => (
          <label className="choice" key={w}>
            <input type="radio" name={name} checked={which === w} onChange={() => setWhich(w)} />
            {w === 'all' ? 'All rows' : w === 'refused' ? `Refused rows (${refused})` : `Rows to look at (${warned})`}
          </label>
        ))}
      </div>
      {rows.length === 0 ? <p className="empty">No such rows.</p> : null}
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable by keyboard */}
      <section className="scrolls" aria-label="Rows of the file" tabIndex={0}>
        <table>
          <thead>
            <tr>
              <th scope="col" className="n">
                Row
              </th>
              <th scope="col">Verdict</th>
              {header.map((h, i) => (
                // biome-ignore lint/suspicious/noArrayIndexKey: a file may name two columns alike
                <th scope="col" key={i}>
                  {h}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {rows.map((r) => (
              <tr key={r.row}>
                <td className="n">{r.row}</td>
                <td>
                  <Verdict row={r} />
                </td>
                {r.cells.map((c, i) => (
                  // biome-ignore lint/suspicious/noArrayIndexKey: cells stand in the order of the file
                  <td key={i}>{c}</td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </section>
      {rows.length < chosen.length ? (
        <button type="button" onClick={() => setAll(true)}>
          Show all {chosen.length} rows
        </button>
      ) : null}
    </>
  );
}
