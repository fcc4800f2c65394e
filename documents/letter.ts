import { Refusal } from '../engine/index.ts';
import type { Block, Letter } from '../sheets/index.ts';
import { drawScene, INKS } from './draw.ts';
import { bytesOf, dayInFull, openPaper, ruledBlock } from './paper.ts';

const PAGE = { width: 595.28, height: 841.89, side: 50, top: 42, foot: 46 };
const WIDTH = PAGE.width - 2 * PAGE.side;
const FOOT_HEIGHT = 52;
const MORE = 'More stands on the page kept under this number.';

interface Try {
  readonly scale: number;
  readonly gone: ReadonlySet<string>;
}

/** The owner letter: exactly one page of A4. First the type shrinks a little, then paragraphs that may go do. */
export async function letterPdf(letter: Letter): Promise<Uint8Array> {
  const tries: Try[] = [1, 0.95, 0.9, 0.85].map((scale) => ({ scale, gone: new Set<string>() }));
  for (let n = 1; n <= letter.mayGo.length; n++) tries.push({ scale: 0.85, gone: new Set(letter.mayGo.slice(0, n)) });
  for (const scale of [0.8, 0.75, 0.7, 0.65, 0.6]) tries.push({ scale, gone: new Set(letter.mayGo) });
  const room = PAGE.height - PAGE.foot - FOOT_HEIGHT - 8;
  for (const t of tries) if (measure(letter, t) <= room) return finish(letter, t);
  throw new Refusal('letter.does-not-fit', {
    given: `a letter ${letter.subject} that fills more than one page, at the smallest type and without what may go`,
    allowed: 'one page of A4',
    remedy: 'Shorten the name or address of the shop, the title of the directive or the names of the papers',
  });
}

const open = (letter: Letter): PDFKit.PDFDocument =>
  openPaper({ title: `${letter.title}: letter ${letter.subject}`, author: letter.title, day: letter.day });
function measure(letter: Letter, t: Try): number {
  const pdf = open(letter);
  const y = write(pdf, letter, t);
  pdf.end();
  return y;
}
function finish(letter: Letter, t: Try): Promise<Uint8Array> {
  const pdf = open(letter);
  return bytesOf(pdf, () => {
    write(pdf, letter, t);
    ruledBlock(pdf, letter.titleBlock, {
      x: PAGE.side,
      y: PAGE.height - PAGE.foot - FOOT_HEIGHT + 8,
      width: WIDTH,
      height: FOOT_HEIGHT - 8,
    });
  });
}

/** Writes from the top and returns where it ended. */
function write(pdf: PDFKit.PDFDocument, letter: Letter, { scale, gone }: Try): number {
  let y = PAGE.top;
  const tag = (name: 'H1' | 'H2' | 'P' | 'LI', draw: () => void) =>
    pdf.addStructure(pdf.struct(name, {}, () => draw()));
  const put = (
    as: 'H1' | 'H2' | 'P' | 'LI',
    words: string,
    size: number,
    font = 'regular',
    ink: keyof typeof INKS = 'ink',
    indent = 0,
  ) => {
    const options = { width: WIDTH - indent, lineGap: size * 0.18 };
    pdf.font(font).fontSize(size);
    const height = pdf.heightOfString(words, options);
    const top = y;
    if (top + height < PAGE.height)
      tag(as, () => {
        pdf
          .font(font)
          .fontSize(size)
          .fillColor(INKS[ink])
          .text(words, PAGE.side + indent, top, options);
      });
    y += height;
  };
  const right = dayInFull(letter.day);
  tag('P', () => {
    pdf
      .font('regular')
      .fontSize(10.5 * scale)
      .fillColor(INKS.soft);
    pdf.text(right, PAGE.side, y, { width: WIDTH, align: 'right' });
    pdf.text(letter.subject, PAGE.side, y + 15 * scale, { width: WIDTH, align: 'right' });
  });
  const half = { width: WIDTH * 0.58, lineGap: 2 };
  tag('P', () => {
    pdf
      .font('bold')
      .fontSize(11 * scale)
      .fillColor(INKS.ink)
      .text(letter.title, PAGE.side, y, half);
    pdf
      .font('regular')
      .fontSize(10.5 * scale)
      .fillColor(INKS.soft)
      .text(letter.sender.join(', '), { ...half });
  });
  y = Math.max(pdf.y, y + 30 * scale) + 14 * scale;
  put('H1', letter.answer.map((s) => s.text).join(''), 15 * scale, 'bold');
  y += 6 * scale;
  put('P', letter.because, 10.5 * scale);
  for (const block of letter.blocks) {
    if (gone.has(block.title)) continue;
    y += 9 * scale;
    y = blockAt(
      pdf,
      block,
      y,
      scale,
      put,
      () => y,
      (v) => {
        y = v;
      },
    );
  }
  if (gone.size) {
    y += 6 * scale;
    put('P', MORE, 10.5 * scale);
  }
  y += 10 * scale;
  const from = y;
  put('P', letter.caution ?? '', 8.8 * scale, 'regular', 'soft', 10);
  const to = Math.min(y, PAGE.height - 10);
  pdf
    .markContent('Artifact')
    .rect(PAGE.side, from, 2.2, to - from)
    .fill(INKS.soft);
  pdf.endMarkedContent();
  return y;
}
type Put = (
  as: 'H1' | 'H2' | 'P' | 'LI',
  words: string,
  size: number,
  font?: string,
  ink?: keyof typeof INKS,
  indent?: number,
) => void;

function blockAt(
  pdf: PDFKit.PDFDocument,
  block: Block,
  from: number,
  scale: number,
  put: Put,
  where: () => number,
  set: (y: number) => void,
): number {
  if (block.block === 'picture') {
    const width = WIDTH * Math.max(0.8, scale);
    const height = (width / block.scene.width) * block.scene.height;
    if (from + height < PAGE.height)
      pdf.addStructure(
        pdf.struct('Figure', { alt: block.scene.description }, () =>
          drawScene(pdf, block.scene, PAGE.side, from, width),
        ),
      );
    set(from + height);
  } else if (block.block === 'prose') {
    put('H2', block.title, 11 * scale, 'bold');
    set(where() + 1.5 * scale);
    for (const p of block.paragraphs) put('P', p, 10.5 * scale);
    for (const item of block.list ?? []) put('LI', `•  ${item}`, 10.5 * scale, 'regular', 'ink', 6);
  }
  return where();
}
