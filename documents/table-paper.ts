import type { Block, Cell, Sheet, TableBlock } from '../sheets/index.ts';
import { cardsOn } from './cards-paper.ts';
import { drawScene, INKS } from './draw.ts';
import {
  ACROSS,
  bottomOf,
  bytesOf,
  dayInFull,
  openPaper,
  type Pen,
  ruledBlock,
  shorten,
  UPRIGHT,
  widthOf,
} from './paper.ts';
import { columnWidths, type Drawn, drawnColumns } from './table-columns.ts';

const GAP = 8;
/** Points to a unit of a scene, at most: a narrow picture is not blown up over the whole page. */
const LARGEST = 0.8;

type Tag = 'H1' | 'H2' | 'P' | 'LI';

/** A sheet on paper: A4 across, or upright where the sheet asks for it, as many pages as it takes, its heads repeated, the caution once at its end. */
export function sheetPdf(sheet: Sheet): Promise<Uint8Array> {
  const shop = sheet.titleBlock.fields.find((f) => f.label === 'Shop')?.value ?? 'Sparwright';
  const page = sheet.paper === 'upright' || sheet.blocks.some((b) => b.block === 'cards') ? UPRIGHT : ACROSS;
  const pdf = openPaper({
    title: `${sheet.title}, ${sheet.subject}`,
    author: shop,
    day: sheet.day,
    layout: page.layout,
  });
  return bytesOf(pdf, () => {
    const pen: Pen = { pdf, page, y: page.top };
    if (sheet.titleBlock.fields.length) {
      ruledBlock(pdf, sheet.titleBlock, { x: page.side, y: pen.y, width: widthOf(pen), height: 42 });
      pen.y += 52;
    }
    put(pen, 'H1', sheet.title, 15, 'bold');
    put(pen, 'P', sheet.answer.map((s) => s.text).join(''), 11, 'bold');
    put(pen, 'P', sheet.because, page.words);
    for (const words of [...(sheet.computing ? [sheet.computing] : []), ...sheet.warnings])
      put(pen, 'P', `Note: ${words}`, page.words);
    for (const block of sheet.blocks) blockOn(pen, block);
    pen.y += 6;
    if (sheet.caution) put(pen, 'P', sheet.caution, 8.5, 'regular', 'soft');
    numberPages(pen, sheet, shop);
  });
}

function room(pen: Pen, height: number): boolean {
  if (pen.y + height <= bottomOf(pen)) return false;
  pen.pdf.addPage();
  pen.y = pen.page.top;
  return true;
}
function put(pen: Pen, as: Tag, words: string, size: number, font = 'regular', ink: keyof typeof INKS = 'ink'): void {
  if (!words) return;
  const { pdf } = pen;
  const options = { width: widthOf(pen), lineGap: size * 0.15 };
  pdf.font(font).fontSize(size);
  const height = pdf.heightOfString(words, options);
  room(pen, height);
  pdf.addStructure(
    pdf.struct(as, {}, () => {
      pdf
        .font(font)
        .fontSize(size)
        .fillColor(INKS[ink])
        .text(words, pen.page.side, pen.y, { ...options, height: bottomOf(pen) - pen.y });
    }),
  );
  pen.y += height + size * 0.35;
}

function blockOn(pen: Pen, block: Block): void {
  pen.y += 6;
  if (block.block === 'picture') picture(pen, block.scene);
  else if (block.block === 'cards') cardsOn(pen, block);
  else {
    room(pen, block.block === 'table' ? Math.max(60, HEAD + together(pen, block)) : 60);
    put(pen, 'H2', block.title, 11, 'bold');
    wordsOn(pen, block);
  }
}
function wordsOn(pen: Pen, block: Exclude<Block, { block: 'picture' | 'cards' }>): void {
  if (block.block === 'table') {
    if (block.rows.length) table(pen, block);
    else put(pen, 'P', block.empty, pen.page.words);
  } else if (block.block === 'key-value') {
    for (const p of block.pairs) put(pen, 'P', `${p.key}: ${wordsOf(p.cell)}`, pen.page.words);
  } else if (block.block === 'findings') {
    if (!block.findings.length) put(pen, 'P', block.empty, pen.page.words);
    for (const f of block.findings) put(pen, 'LI', `•  ${f.text} ${f.remedy}`, pen.page.words);
  } else {
    for (const p of block.paragraphs) put(pen, 'P', p, pen.page.words);
    for (const l of block.list ?? []) put(pen, 'LI', `•  ${l}`, pen.page.words);
  }
}
/** A picture a little too high for what is left of the page is set smaller; else it begins the next one. */
const LEAST = 0.72;
const HEAD = 22;
function picture(pen: Pen, scene: Extract<Block, { block: 'picture' }>['scene']): void {
  const most = Math.min(
    widthOf(pen),
    (bottomOf(pen) - pen.page.top - HEAD) * (scene.width / scene.height),
    scene.width * LARGEST,
  );
  const left = (bottomOf(pen) - pen.y - HEAD) * (scene.width / scene.height);
  const fits = left >= most * LEAST;
  const width = fits ? Math.min(most, left) : most;
  const height = (width / scene.width) * scene.height;
  room(pen, height + HEAD);
  put(pen, 'H2', scene.title, 11, 'bold');
  pen.pdf.addStructure(
    pen.pdf.struct('Figure', { alt: scene.description }, () => drawScene(pen.pdf, scene, pen.page.side, pen.y, width)),
  );
  pen.y += height;
}
const wordsOf = (c: Cell | undefined): string =>
  !c || c.is === 'nothing' ? '' : 'small' in c && c.small ? `${c.text}, ${c.small}` : c.text;

/** A table of up to this share of a page is not cut in two; of a longer one the head is not left without rows. */
const WHOLE = 0.7;
const FIRST_ROWS = 3;
function together(pen: Pen, block: TableBlock): number {
  const whole = tableHeight(pen, block, block.rows);
  return whole <= (bottomOf(pen) - pen.page.top) * WHOLE
    ? whole
    : tableHeight(pen, block, block.rows.slice(0, FIRST_ROWS));
}
function tableHeight(pen: Pen, block: TableBlock, rows: TableBlock['rows']): number {
  const { pdf } = pen;
  const columns = drawnColumns(block);
  const widths = columnWidths(pdf, columns, block.rows, widthOf(pen), pen.page.cells, GAP);
  const most = (of: (c: Drawn) => Words) => Math.max(0, ...columns.map((c, i) => heightOf(pen, of(c), widths[i]!)));
  const head = most((c) => ({ text: c.heading, small: '' }));
  let height = head + 6;
  for (const row of rows) {
    height += most((c) => c.of(row)) + 6;
    if (height > bottomOf(pen)) break;
  }
  return height;
}

/** Rows are never torn: one that does not fit begins the next page, under the head. */
function table(pen: Pen, block: TableBlock): void {
  const { pdf } = pen;
  const columns = drawnColumns(block);
  const widths = columnWidths(pdf, columns, block.rows, widthOf(pen), pen.page.cells, GAP);
  const element = pdf.struct('Table');
  pdf.addStructure(element);
  const head = () => line(pen, element, 'TH', columns, widths, (c) => ({ text: c.heading, small: '' }));
  head();
  for (const row of block.rows) {
    const cells = columns.map((c) => c.of(row));
    const height = Math.max(...cells.map((c, i) => heightOf(pen, c, widths[i]!)));
    if (room(pen, height + 5)) head();
    line(pen, element, 'TD', columns, widths, (_, i) => cells[i]!);
  }
  element.end();
}
interface Words {
  readonly text: string;
  readonly small: string;
}
const MOST = 4;
/** As high as it stands in bold: a heading and what asks for an act are set so. */
function heightOf({ pdf, page }: Pen, { text, small }: Words, width: number): number {
  const of = (words: string, size: number, font: 'bold' | 'regular') => {
    if (!words) return 0;
    pdf.font(font).fontSize(size);
    return Math.min(pdf.heightOfString(words, { width }), MOST * size * 1.35);
  };
  return of(text, page.cells, 'bold') + of(small, page.cells - 1, 'regular');
}
function line(
  pen: Pen,
  into: PDFKit.PDFStructureElement,
  as: 'TH' | 'TD',
  columns: readonly Drawn[],
  widths: readonly number[],
  of: (c: Drawn, i: number) => Words,
): void {
  const { pdf, page } = pen;
  const all = columns.map(of);
  const height = Math.max(...all.map((c, i) => heightOf(pen, c, widths[i]!)));
  const row = pdf.struct('TR');
  into.add(row);
  let x = page.side;
  all.forEach(({ text, small }, i) => {
    const [left, width] = [x, widths[i]!];
    const align = columns[i]!.right ? ('right' as const) : ('left' as const);
    row.add(
      pdf.struct(as, {}, () => {
        const font = as === 'TH' || columns[i]!.act(text) ? 'bold' : 'regular';
        pdf
          .font(font)
          .fontSize(page.cells)
          .fillColor(as === 'TH' ? INKS.soft : INKS.ink);
        if (text) pdf.text(text, left, pen.y, { width, align, height: MOST * page.cells * 1.35, ellipsis: true });
        const below = text ? pdf.y : pen.y;
        pdf
          .font('regular')
          .fontSize(page.cells - 1)
          .fillColor(INKS.soft);
        if (small) pdf.text(small, left, below, { width, align, height: MOST * page.cells * 1.3, ellipsis: true });
      }),
    );
    x += width + GAP;
  });
  row.end();
  pen.y += height + 3;
  pdf
    .markContent('Artifact')
    .lineWidth(as === 'TH' ? 0.9 : 0.4)
    .strokeColor(as === 'TH' ? INKS.ink : INKS.line)
    .moveTo(page.side, pen.y)
    .lineTo(page.side + widthOf(pen), pen.y)
    .stroke();
  pdf.endMarkedContent();
  pen.y += 2.5;
}

function numberPages({ pdf, page }: Pen, sheet: Sheet, shop: string): void {
  const width = page.width - 2 * page.side;
  const { count } = pdf.bufferedPageRange();
  for (let i = 0; i < count; i++) {
    pdf.switchToPage(i);
    pdf.font('regular').fontSize(7.5).fillColor(INKS.soft).markContent('Artifact');
    const invented = sheet.provenance.invented ? 'All data is invented' : '';
    const left = [invented, shop, sheet.title, dayInFull(sheet.day), sheet.number].filter(Boolean).join(', ');
    pdf.text(shorten(pdf, left, width - 90), page.side, page.height - 26, { lineBreak: false });
    pdf.text(`page ${i + 1} of ${count}`, page.side, page.height - 26, {
      width,
      align: 'right',
      lineBreak: false,
    });
    pdf.endMarkedContent();
  }
}
