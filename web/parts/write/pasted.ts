const BLANKS = /[\s\u00a0\u202f]/g;

/** A figure with any exponent; what is no figure stays text. */
export function exactFigureOf(text: string): number | string {
  const bare = text.replace(BLANKS, '').replaceAll('−', '-');
  if (!/^[-+]?(\d+\.?\d*|\.\d+)([eE][-+]?\d{1,3})?$/.test(bare)) return text;
  const n = Number(bare);
  return Number.isFinite(n) ? n : text;
}

export type Decimal = '.' | ',';
export interface Pasted {
  readonly rows: readonly (readonly number[])[];
  /** The words above the figures, if there were any. */
  readonly heading: readonly string[] | null;
  readonly decimal: Decimal;
  /** A comma may be the decimal sign or stand between thousands or columns: a person must say. */
  readonly ask: boolean;
  /** Lines that do not read, counted from 1. */
  readonly wrong: readonly { readonly line: number; readonly text: string; readonly because: string }[];
}

type Split = (line: string) => readonly string[];
const byTab: Split = (l) => l.split('\t');
const bySemicolon: Split = (l) => l.split(';');
const byComma: Split = (l) => l.split(',');
const byBlank: Split = (l) => l.trim().split(/\s+/);

/** Whole figures without a sign that may mean two things: most cells of most tables. */
const PLAIN = /^-?\d{1,15}$/;
const GROUPED: Readonly<Record<Decimal, RegExp>> = {
  '.': /^[-+]?\d{1,3}(,\d{3})+(\.\d*)?$/,
  ',': /^[-+]?\d{1,3}(\.\d{3})+(,\d*)?$/,
};
/** A cell as a figure: with a decimal comma, points stand between thousands, and the other way round. */
function figureIn(cell: string, decimal: Decimal): number | null {
  if (PLAIN.test(cell)) return Number(cell);
  const bare = cell
    .replace(BLANKS, '')
    .replaceAll('−', '-')
    .replace(/^["']|["']$/g, '');
  const thousands = decimal === ',' ? '.' : ',';
  const plain = (GROUPED[decimal].test(bare) ? bare.replaceAll(thousands, '') : bare).replace(decimal, '.');
  const n = exactFigureOf(plain);
  return typeof n === 'number' && !(decimal === '.' && plain.includes(',')) ? n : null;
}

/** Whether the commas within cells must be decimal signs, cannot be, or may be either. */
function commasAre(cells: readonly string[]): Decimal | 'either' {
  const commas = cells.filter((c) => c.includes(','));
  if (commas.length === 0) return '.';
  if (commas.some((c) => /,\d+\.\d/.test(c) || /,.*,/.test(c))) return '.';
  if (commas.some((c) => /\.\d{3},/.test(c) || !/^\s*[-+−]?[1-9]\d{0,2},\d{3}\s*$/.test(c))) return ',';
  if (cells.some((c) => /^\s*[-+−]?\d+\.\d+\s*$/.test(c))) return '.';
  return 'either';
}

/**
 * A table from a spreadsheet or a text: columns by tab, semicolon, comma or blanks; decimal point or comma. What the
 * commas mean is told by the rest of the table, else it is asked; `decimal` is what a person answered.
 */
export function readPasted(text: string, decimal?: Decimal): Pasted {
  const lines = text.split(/\r\n|\r|\n/).map((t, i) => ({ text: t, line: i + 1 }));
  const filled = lines.filter((l) => l.text.trim() !== '' && !/^\s*#/.test(l.text));
  const all = filled.map((l) => l.text);
  const has = (sign: string) => all.some((l) => l.includes(sign));
  const split: Split = has('\t')
    ? byTab
    : has(';')
      ? bySemicolon
      : all.some((l) => /^\s*[-+−.\d][-+−.,\deE]*\s+[-+−.\d]/.test(l) && !/,\s/.test(l))
        ? byBlank
        : byComma;
  if (split === byComma) return readCommas(filled, decimal);
  const cells = filled.flatMap((l) => split(l.text)).filter((c) => /^[\s\d.,eE+\-−]*$/.test(c) && /\d/.test(c));
  const told = commasAre(cells);
  const meant = decimal ?? (told === 'either' ? ',' : told);
  return { ...rowsOf(filled, split, meant), decimal: meant, ask: decimal === undefined && told === 'either' };
}

/** Commas alone: they divide the columns, unless every line has just the one of a decimal figure or both senses fit. */
function readCommas(filled: readonly Line[], decimal: Decimal | undefined): Pasted {
  const divided = rowsOf(filled, byComma, '.');
  const paired = filled.map((l) => {
    const parts = l.text.split(',').map((p) => p.trim());
    const whole = parts.length === 4 && parts.every((p) => /^[-+−]?\d+$/.test(p));
    return whole ? [`${parts[0]},${parts[1]}`, `${parts[2]},${parts[3]}`] : null;
  });
  if (!paired.some((p) => p !== null)) return { ...divided, decimal: '.', ask: false };
  const both: Split = (l) => {
    const parts = l.split(',').map((p) => p.trim());
    return parts.length === 4 ? [`${parts[0]},${parts[1]}`, `${parts[2]},${parts[3]}`] : parts;
  };
  if (decimal === ',') return { ...rowsOf(filled, both, ','), decimal: ',', ask: false };
  return { ...divided, decimal: '.', ask: decimal === undefined };
}

interface Line {
  readonly text: string;
  readonly line: number;
}
function rowsOf(lines: readonly Line[], split: Split, decimal: Decimal) {
  const rows: number[][] = [];
  const wrong: { line: number; text: string; because: string }[] = [];
  let heading: readonly string[] | null = null;
  for (const l of lines) {
    const cells = split(l.text).map((c) => c.trim());
    while (cells.at(-1) === '') cells.pop();
    const figures = cells.map((c) => figureIn(c, decimal));
    if (figures.every((n) => n !== null)) rows.push(figures);
    else if (rows.length === 0 && 2 * figures.filter((n) => n === null).length >= cells.length) heading = cells;
    else wrong.push({ line: l.line, text: l.text.trim(), because: 'holds a cell that is no figure' });
  }
  const width = rows[0]?.length ?? 0;
  const kept = rows.filter((r) => r.length === width);
  if (kept.length < rows.length)
    wrong.push({
      line: 0,
      text: '',
      because: `${rows.length - kept.length} lines have another number of columns than the first`,
    });
  return { rows: kept, heading, wrong };
}
