import type { Card, CardsBlock, Scene } from '../sheets/index.ts';
import { sceneShown } from '../sheets/index.ts';
import { drawScene, INKS } from './draw.ts';
import { bottomOf, type Pen, widthOf } from './paper.ts';

const PAD = 12;
const GAP = 12;
const [TITLE, STEP, FACT, SMALL] = [15, 12, 10, 9] as const;
/** A picture takes this share of the width of a card; less where two cards would else not stand on a page. */
const PICTURES = [0.58, 0.52, 0.46] as const;
const SIGN = 28;
const BOX = 11;
const INDENT = 20;

/** Work cards, never torn in two: as many to a page as fit, large enough to be read at the bench. */
export function cardsOn(pen: Pen, block: CardsBlock): void {
  if (!block.cards.length) {
    pen.pdf.font('regular').fontSize(STEP).fillColor(INKS.ink).text(block.empty, pen.page.side, pen.y);
    pen.y = pen.pdf.y;
    return;
  }
  const page = bottomOf(pen) - pen.page.top;
  for (const card of block.cards) {
    const heightAt = (share: number) => write({ pen, draw: false, y: pen.y }, card, block.scene, share);
    const fits = (height: number) => PICTURES.find((s) => heightAt(s) <= height);
    const share = fits((page - GAP) / 2) ?? fits(page) ?? PICTURES[2];
    const height = heightAt(share);
    if (pen.y + height > bottomOf(pen)) {
      pen.pdf.addPage();
      pen.y = pen.page.top;
    }
    write({ pen, draw: true, y: pen.y }, card, block.scene, share);
    pen.y += height + GAP;
  }
}

/** A card being written, or only measured. */
interface Hand {
  readonly pen: Pen;
  readonly draw: boolean;
  y: number;
}
interface Words {
  readonly as: 'H2' | 'P' | 'LI';
  readonly size: number;
  readonly bold?: boolean;
  readonly ink?: keyof typeof INKS;
}
/** Words from `x` over `width`; the hand moves below them. */
function put(hand: Hand, words: string, x: number, width: number, how: Words): void {
  if (!words) return;
  const { pdf } = hand.pen;
  const set = () => pdf.font(how.bold ? 'bold' : 'regular').fontSize(how.size);
  const options = { width, lineGap: 1 };
  const height = set().heightOfString(words, options);
  const at = hand.y;
  if (hand.draw)
    pdf.addStructure(
      pdf.struct(how.as, {}, () => {
        set()
          .fillColor(INKS[how.ink ?? 'ink'])
          .text(words, x, at, options);
      }),
    );
  hand.y += height + 2;
}

/** Writes a card from where the hand is; returns its height. */
function write(hand: Hand, card: Card, scene: Scene | null, share: number): number {
  const { pen, draw } = hand;
  const { pdf, page } = pen;
  const top = hand.y;
  const left = page.side + PAD;
  const width = widthOf(pen) - 2 * PAD;
  hand.y += PAD * 0.7;
  put(hand, `${card.number}, ${card.stage}`, left, width, { as: 'P', size: SMALL, ink: 'soft' });
  put(hand, card.title, left, width, { as: 'H2', size: TITLE, bold: true });
  picture(hand, card, scene, left, width, share);
  for (const step of card.steps) {
    hand.y += 3;
    const box = hand.y + 2;
    if (draw)
      artifact(pen, () => {
        pdf.lineWidth(0.9).strokeColor(INKS.ink).rect(left, box, BOX, BOX).stroke();
        if (step.done) tick(pdf, left, box);
      });
    const facts = [...step.facts, ...(step.done ? [`done ${step.done}`] : [])].join('; ');
    put(hand, step.title, left + INDENT, width - INDENT, { as: 'LI', size: STEP, bold: true });
    put(hand, facts, left + INDENT, width - INDENT, { as: 'P', size: FACT });
  }
  hand.y += 4;
  if (draw) signs(pen, card.signs, left, hand.y, width);
  if (card.signs.length) hand.y += SIGN;
  const height = hand.y - top + 2;
  if (draw)
    artifact(pen, () => {
      pdf
        .lineWidth(card.stop ? 2.4 : 0.9)
        .strokeColor(INKS.ink)
        .rect(page.side, top, widthOf(pen), height)
        .stroke();
    });
  return height;
}

/** The wing in this state; beside it what stops the work and what must be off first. */
function picture(hand: Hand, card: Card, scene: Scene | null, left: number, width: number, share: number): void {
  const { pdf } = hand.pen;
  const seen = scene && card.shown ? sceneShown(scene, card.shown, { cut: true }) : null;
  const wide = seen ? width * share : 0;
  const from = hand.y + 2;
  if (seen && hand.draw)
    pdf.addStructure(pdf.struct('Figure', { alt: seen.description }, () => drawScene(pdf, seen, left, from, wide)));
  const [x, room] = seen ? [left + wide + PAD, width - wide - PAD] : [left, width];
  if (seen) hand.y += 6;
  put(hand, card.stop ?? '', x, room, { as: 'P', size: STEP, bold: true, ink: 'dye' });
  put(hand, card.first, x, room, { as: 'P', size: FACT });
  if (seen) hand.y = Math.max(hand.y, from + (wide / seen.width) * seen.height + 4);
}

/** Lines to sign, side by side, each after its words. */
function signs(pen: Pen, all: readonly string[], left: number, y: number, width: number): void {
  const { pdf } = pen;
  const each = width / Math.max(1, all.length);
  all.forEach((words, i) => {
    const at = left + i * each;
    const set = () => pdf.font('regular').fontSize(SMALL);
    pdf.addStructure(
      pdf.struct('P', {}, () => {
        set()
          .fillColor(INKS.soft)
          .text(words, at, y + 15, { lineBreak: false });
      }),
    );
    const from = at + set().widthOfString(words) + 6;
    artifact(pen, () => {
      pdf
        .lineWidth(0.7)
        .strokeColor(INKS.ink)
        .moveTo(from, y + 24)
        .lineTo(at + each - 10, y + 24)
        .stroke();
    });
  });
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
