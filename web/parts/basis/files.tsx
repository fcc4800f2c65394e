const FORMATS = [
  { format: 'pdf', text: 'PDF' },
  { format: 'csv', text: 'CSV' },
  { format: 'xlsx', text: 'XLSX' },
] as const;

/** The page as a file to keep. */
export function SheetFiles({ path, what }: { path: (format: string) => string; what: string }) {
  return (
    <>
      {FORMATS.map(({ format, text }) => (
        <a key={format} className="button" href={path(format)} download>
          {text}
          <span className="hidden-text">: {what} as a file</span>
        </a>
      ))}
    </>
  );
}
