/** Once where a figure could hurt, in plain words. */
export function Caution({ text }: { text: string | undefined }) {
  return text ? <p className="caution">{text}</p> : null;
}

export function Warnings({ warnings }: { warnings: readonly string[] }) {
  if (warnings.length === 0) return null;
  return (
    <ul className="warnings">
      {warnings.map((w) => (
        <li key={w}>{w}</li>
      ))}
    </ul>
  );
}
