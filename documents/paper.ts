import PDFDocument from 'pdfkit';
import type { TitleBlock } from '../sheets/index.ts';
import { BOLD, INKS, REGULAR } from './draw.ts';

/** A page of A4: its edges, and the size of its words and of the cells of its tables, in points. */
export interface Paper {
  readonly layout: 'portrait' | 'landscape';
  readonly width: number;
  readonly height: number;
  readonly side: number;
  readonly top: number;
  readonly foot: number;
  readonly words: number;
  readonly cells: number;
}
export const ACROSS: Paper = {
  layout: 'landscape',
  width: 841.89,
  height: 595.28,
  side: 36,
  top: 34,
  foot: 40,
  words: 9,
  cells: 8,
};
export const UPRIGHT: Paper = {
  layout: 'portrait',
  width: 595.28,
  height: 841.89,
  side: 46,
  top: 40,
  foot: 44,
  words: 10,
  cells: 9,
};
/** A page being written: where the next line goes. */
export interface Pen {
  readonly pdf: PDFKit.PDFDocument;
  readonly page: Paper;
  y: number;
}
export const widthOf = ({ page }: Pen): number => page.width - 2 * page.side;
export const bottomOf = ({ page }: Pen): number => page.height - page.foot;

/** What every document shares: how it opens, the ruled block, long words cut. The same sheet gives the same bytes. */
export function openPaper(about: {
  readonly title: string;
  readonly author: string;
  readonly day: string;
  readonly layout?: 'portrait' | 'landscape';
}): PDFKit.PDFDocument {
  const at = new Date(`${about.day}T12:00:00Z`);
  const pdf = new PDFDocument({
    size: 'A4',
    layout: about.layout ?? 'portrait',
    margin: 0,
    pdfVersion: '1.7',
    tagged: true,
    lang: 'en-GB',
    displayTitle: true,
    autoFirstPage: true,
    bufferPages: true,
    info: {
      Title: about.title,
      Author: about.author,
      CreationDate: at,
      ModDate: at,
      Producer: 'Sparwright',
      Creator: 'Sparwright',
    },
  });
  pdf.registerFont('regular', REGULAR);
  pdf.registerFont('bold', BOLD);
  return pdf;
}

/** Writes, ends, and gives the bytes. */
export function bytesOf(pdf: PDFKit.PDFDocument, write: () => void): Promise<Uint8Array> {
  const chunks: Buffer[] = [];
  return new Promise((resolve, reject) => {
    pdf.on('data', (c: Buffer) => chunks.push(c));
    pdf.on('end', () => resolve(new Uint8Array(Buffer.concat(chunks))));
    pdf.on('error', reject);
    write();
    pdf.end();
  });
}

/** The ruled block, as on a drawing. Long values are cut. */
export function ruledBlock(
  pdf: PDFKit.PDFDocument,
  { fields }: TitleBlock,
  at: { readonly x: number; readonly y: number; readonly width: number; readonly height: number },
): void {
  const shares = sharesOf(pdf, fields, at.width);
  const sum = shares.reduce((a, b) => a + b, 0);
  pdf.markContent('Artifact').lineWidth(1).strokeColor(INKS.ink).rect(at.x, at.y, at.width, at.height).stroke();
  pdf.endMarkedContent();
  let x = at.x;
  fields.forEach((field, i) => {
    const width = (at.width * shares[i]!) / sum;
    if (i > 0) {
      pdf
        .markContent('Artifact')
        .lineWidth(0.7)
        .strokeColor(INKS.line)
        .moveTo(x, at.y)
        .lineTo(x, at.y + at.height)
        .stroke();
      pdf.endMarkedContent();
    }
    const left = x + 6;
    const lines: [string, string, number, string][] = [
      [field.label, 'regular', 7, INKS.soft],
      [field.value, 'bold', 9, INKS.ink],
      [field.small ?? '', 'regular', 7.5, INKS.soft],
    ];
    pdf.addStructure(
      pdf.struct('P', {}, () => {
        lines.forEach(([words, font, size, ink], k) => {
          if (words)
            pdf
              .font(font)
              .fontSize(size)
              .fillColor(ink)
              .text(shorten(pdf, words, width - 12), left, at.y + [5, 14, 27][k]!, { lineBreak: false });
        });
      }),
    );
    x += width;
  });
}

/** The first field is the widest; where that would cut a value and another has room to spare, by what each holds. */
function sharesOf(pdf: PDFKit.PDFDocument, fields: TitleBlock['fields'], width: number): number[] {
  const usual = fields.map((_, i) => (i === 0 ? 1.7 : 1));
  const sum = usual.reduce((a, b) => a + b, 0);
  const wanted = fields.map((f) => {
    const value = pdf.font('bold').fontSize(9).widthOfString(f.value);
    const small = pdf
      .font('regular')
      .fontSize(7.5)
      .widthOfString(f.small ?? '');
    return Math.max(value, small, pdf.fontSize(7).widthOfString(f.label)) + 14;
  });
  const cut = wanted.some((w, i) => w > (width * usual[i]!) / sum);
  const whole = wanted.reduce((a, b) => a + b, 0) <= width;
  return cut && whole ? wanted : usual;
}

export function shorten(pdf: PDFKit.PDFDocument, words: string, width: number): string {
  if (pdf.widthOfString(words) <= width) return words;
  let cut = words;
  while (cut && pdf.widthOfString(`${cut} ...`) > width) cut = cut.slice(0, -1);
  return `${cut} ...`;
}

const MONTHS = 'January February March April May June July August September October November December'.split(' ');
export const dayInFull = (d: string): string =>
  `${Number(d.slice(8))} ${MONTHS[Number(d.slice(5, 7)) - 1]} ${d.slice(0, 4)}`;
