import type { Sheet } from '../../../sheets/model.ts';

/** How fresh the rows are: being computed, or the last that were read before the program was gone. */
export function Fresh({ sheet, gone }: { sheet: Sheet; gone: boolean }) {
  const on = sheet.titleBlock.fields.find((f) => /^(Standing on|On)$/.test(f.label))?.value ?? sheet.day;
  return (
    <p className="computing" role="status">
      {gone ? `These are the last rows that were read, as on ${on}. They renew themselves.` : (sheet.computing ?? '')}
    </p>
  );
}
