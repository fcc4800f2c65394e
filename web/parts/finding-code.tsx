/** The code of a finding, for whoever looks it up in the method: folded, as its sentence says it all. */
export function FindingCode({ code }: { code: string }) {
  return (
    <details className="refs no-print">
      <summary>Its code</summary>
      <code>{code}</code>
    </details>
  );
}
