/** How far the file has come; without a figure while the server reads. */
export function Progress({ part, what }: { part: number | null; what: string }) {
  return (
    <div className="sheet" role="status">
      <label>
        {what}
        <progress max={1} {...(part === null ? {} : { value: part })} />
      </label>
    </div>
  );
}
