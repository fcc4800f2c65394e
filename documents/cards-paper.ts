import type { Card, CardsBlock, Scene } from '../sheets/index.ts';
import { sceneShown } from '../sheets/index.ts';
import { drawScene, INKS } from './draw.ts';
import { bottomOf, type Pen, widthOf } from './paper.ts';

const PAD = 12;
const GAP = 14;
const [TITLE, STEP, FACT, SMALL] = [15, 12, 10, 9] as const;
/** A picture takes this share of the width of a card; less where two cards would else not stand on a page. */
const PICTURES = [0.8, 0.7, 0.6] as const;
const SIGN = 28;

/** Work cards, never torn in two: as many to a page as fit, large enough to be read at the bench. */
export function cardsOn(pen: Pen, block: CardsBlock): void {
  if (!block.cards.length) {
    pen.pdf.font('regular').fontSize(STEP).fillColor(INKS.ink).text(block.empty, pen.page.side, pen.y);
    pen.y = pen.pdf.y;
    return;
  }
  for (const card of block.cards) {
    const half = (bottomOf(pen) - pen.page.top - GAP) / 2;
    const heightAt = (share: number) => write(pen, card, block.scene, share, pen.y, false);
    const share = PICTURES.find((s) => heightAt(s) <= half) ?? PICTURES[0];
    const height = heightAt(share);
    if (pen.y + height > bottomOf(pen)) {
      pen.pdf.addPage();
      pen.y = pen.page.top;
    }
    write(pen, card, block.scene, share, pen.y, true);
    pen.y += height + GAP;
  }
}

/** Draws a card from `top`, or only measures it; returns its height. */
function write(pen: Pen, card: Card, scene: Scene | null, share: number, top: number, draw: boolean): number {
  const { pdf, page } = pen;
  const left = page.side + PAD;
  const width = widthOf(pen) - 2 * PAD;
  let y = top + PAD * 0.7;
  const put = (
    as: 'H2' | 'P' | 'LI',
    words: string,
    size: number,
    font: 'regular' | 'bold' = 'regular',
    ink: keyof typeof INKS = 'ink',
    indent = 0,
  ) => {
    if (!words) return;
    const options = { width: width - indent, lineGap: 1 };
    pdf.font(font).fontSize(size);
    const height = pdf.heightOfString(words, options);
    const at = y;
    if (draw)
      pdf.addStructure(
        pdf.struct(as, {}, () => {
          pdf
            .font(font)
            .fontSize(size)
            .fillColor(INKS[ink])
            .text(words, left + indent, at, options);
        }),
      );
    y += height + 2;
  };
  put('P', `${card.number}, ${card.stage}`, SMALL, 'regular', 'soft');
  put('H2', card.title, TITLE, 'bold');
  if (card.stop) put('P', card.stop, STEP, 'bold', 'dye');
  if (scene && card.shown) {
    const wide = width * share;
    const seen = sceneShown(scene, card.shown, { cut: true });
    const high = (wide / seen.width) * seen.height;
    const at = y + 2;
    if (draw)
      pdf.addStructure(pdf.struct('Figure', { alt: seen.description }, () => drawScene(pdf, seen, left, at, wide)));
    y += high + 6;
  }
  put('P', card.first, FACT);
  for (const step of card.steps) {
    y += 3;
    if (draw)
      artifact(pen, () =>
        pdf
          .lineWidth(0.9)
          .strokeColor(INKS.ink)
          .rect(left, y + 2, 11, 11)
          .stroke(),
      );
    if (draw && step.done) artifact(pen, () => tick(pdf, left, y + 2));
    put('LI', step.title, STEP, 'bold', 'ink', 20);
    put('P', [...step.facts, ...(step.done ? [`done ${step.done}`] : [])].join('; '), FACT, 'regular', 'ink', 20);
  }
  y += 4;
  const each = width / Math.max(1, card.signs.length);
  card.signs.forEach((words, i) => {
    if (!draw) return;
    const at = left + i * each;
    pdf.addStructure(
      pdf.struct('P', {}, () => {
        pdf
          .font('regular')
          .fontSize(SMALL)
          .fillColor(INKS.soft)
          .text(words, at, y + 15, { width: each, lineBreak: false });
      }),
    );
    const from = at + pdf.font('regular').fontSize(SMALL).widthOfString(words) + 6;
    artifact(pen, () =>
      pdf
        .lineWidth(0.7)
        .strokeColor(INKS.ink)
        .moveTo(from, y + 24)
        .lineTo(at + each - 10, y + 24)
        .stroke(),
    );
  });
  y += card.signs.length ? SIGN : 0;
  const height = y - top + 2;
  if (draw)
    artifact(pen, () =>
      pdf
        .lineWidth(card.stop ? 2.4 : 0.9)
        .strokeColor(INKS.ink)
        .rect(page.side, top, widthOf(pen), height)
        .stroke(),
    );
  return height;
}
function artifact({ pdf }: Pen, draw: () => void): void {
  pdf.markContent('Artifact');
  draw();
  pdf.endMarkedContent();
}
const tick = (pdf: PDFKit.PDFDocument, x: number, y: number): void => {
  pdf
    .lineWidth(1.4)
    .strokeColor(INKS.ink)
    .moveTo(x + 2, y + 6)
    .lineTo(x + 5, y + 9)
    .lineTo(x + 10, y + 1)
    .stroke();
};
