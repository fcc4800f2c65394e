const FORMATS = [
  { format: 'pdf', text: 'PDF, to sign' },
  { format: 'csv', text: 'CSV' },
  { format: 'xlsx', text: 'XLSX' },
] as const;

/** The same sheet as a file to keep. */
export function Files({ path, what }: { path: (format: string) => string; what: string }) {
  return (
    <div className="actions no-print">
      {FORMATS.map(({ format, text }) => (
        <a key={format} className="button" href={path(format)} download>
          {text}
          <span className="hidden-text">: the {what} as a file</span>
        </a>
      ))}
    </div>
  );
}
