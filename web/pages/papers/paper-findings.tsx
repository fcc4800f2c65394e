import { Link } from 'wouter';
import type { PapersSheet } from '../../api/papers.ts';
import { FindingCode } from '../../parts/finding-code.tsx';

/** What the papers contradict or leave open, with the rows it rests on side by side; a correction settles it. */
export function PaperFindings({
  shop,
  sheet,
  correct,
}: {
  shop: string;
  sheet: PapersSheet;
  correct: ((number: number) => void) | null;
}) {
  return (
    <section className="sheet" aria-labelledby="found">
      <h2 id="found">Found in the papers</h2>
      {sheet.findings.length === 0 ? (
        <p className="empty">Nothing contradicts in the papers that were read.</p>
      ) : (
        <ul className="findings">
          {sheet.findings.map((f) => (
            <li key={`${f.code} ${f.text}`}>
              <p>
                <strong>{f.text}</strong>
              </p>
              <p>{f.remedy.replace(/[.]$/, '')}. The worse side counts until it is settled.</p>
              {f.rows.length ? (
                <table>
                  <tbody>
                    {f.rows.map((n) => {
                      const r = sheet.rows.find((x) => x.number === n);
                      if (!r) return null;
                      return (
                        <tr key={n}>
                          <th scope="row">Entry {n}</th>
                          <td>{r.dayWords}</td>
                          <td>
                            {r.kindWords}: {r.says}
                          </td>
                          <td>
                            {[r.paper, r.page && `page ${r.page}`, r.row && `row ${r.row}`].filter(Boolean).join(', ')}
                          </td>
                          <td className="no-print">
                            {r.correctable && correct ? (
                              <button type="button" className="why" onClick={() => correct(n)}>
                                correct<span className="hidden-text"> entry {n}</span>
                              </button>
                            ) : null}
                          </td>
                        </tr>
                      );
                    })}
                  </tbody>
                </table>
              ) : null}
              {f.elsewhere.map((x) => (
                <p key={x.text}>
                  <Link href={`/${shop}/aircraft/${encodeURIComponent(x.aircraft)}/papers`}>{x.text}</Link>
                </p>
              ))}
              <FindingCode code={f.code} />
            </li>
          ))}
        </ul>
      )}
    </section>
  );
}
