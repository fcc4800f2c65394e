import type { Cell, TableBlock } from '../sheets/index.ts';

/** A column as it is drawn on paper: its words, which side they stand on, and what is set bold. */
export interface Drawn {
  readonly heading: string;
  readonly right: boolean;
  readonly of: (row: TableBlock['rows'][number]) => { readonly text: string; readonly small: string };
  readonly act: (text: string) => boolean;
}

const wordsOf = (c: Cell | undefined) =>
  !c || c.is === 'nothing' ? { text: '', small: '' } : { text: c.text, small: 'small' in c ? (c.small ?? '') : '' };

/** Columns that say something; a due line is told by the words of the columns beside it. */
export function drawnColumns(block: TableBlock): Drawn[] {
  return block.columns.flatMap((column) => {
    const cells = block.rows.map((r) => r.cells[column.key]);
    if (cells.every((c) => !c || c.is === 'nothing' || c.is === 'due-line')) return [];
    const acts = new Set(cells.flatMap((c) => (c?.is === 'standing' && c.act ? [c.text] : [])));
    return [
      {
        heading: column.unit ? `${column.title}, ${column.unit}` : column.title,
        right: column.align === 'right',
        of: (row) => wordsOf(row.cells[column.key]),
        act: (text) => acts.has(text),
      },
    ];
  });
}

const LOOKED_AT = 300;
/** Widths by what the columns hold: short ones as wide as they need, long ones share what is left. */
export function columnWidths(
  pdf: PDFKit.PDFDocument,
  columns: readonly Drawn[],
  rows: TableBlock['rows'],
  width: number,
  size: number,
  gap: number,
): number[] {
  const usable = width - gap * (columns.length - 1);
  pdf.font('bold').fontSize(size);
  const wanted = columns.map((c) => {
    const words = rows.slice(0, LOOKED_AT).flatMap((r) => Object.values(c.of(r)));
    const longest = [c.heading, ...words].reduce((a, b) => (b.length > a.length ? b : a), '');
    const word = [c.heading, ...words].flatMap((w) => w.split(' ')).reduce((a, b) => (b.length > a.length ? b : a), '');
    const full = pdf.widthOfString(longest) + 2;
    // A range of figures is not broken in two where there is room elsewhere.
    const least = c.right
      ? Math.max(...words.map((w) => pdf.widthOfString(w)), pdf.widthOfString(word)) + 2
      : pdf.widthOfString(word) + 2;
    return { full: Math.max(full, c.right ? least : 0), least: Math.min(usable / (c.right ? 6 : 3), least) };
  });
  const sum = (of: readonly number[]) => of.reduce((a, b) => a + b, 0);
  const full = sum(wanted.map((w) => w.full));
  if (full <= usable) return wanted.map((w) => w.full + (usable - full) / columns.length);
  const least = sum(wanted.map((w) => w.least));
  if (least >= usable) return wanted.map((w) => (w.least * usable) / least);
  const more = sum(wanted.map((w) => w.full - w.least));
  return wanted.map((w) => w.least + ((w.full - w.least) * (usable - least)) / more);
}
