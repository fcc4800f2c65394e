import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import type { Ink, Mark, Scene } from '../sheets/index.ts';

const fonts = dirname(createRequire(import.meta.url).resolve('@expo-google-fonts/ibm-plex-sans/package.json'));
export const REGULAR = join(fonts, '400Regular', 'IBMPlexSans_400Regular.ttf');
export const BOLD = join(fonts, '600SemiBold', 'IBMPlexSans_600SemiBold.ttf');

/** The inks of the look, as printed. */
export const INKS: Readonly<Record<Exclude<Ink, 'none' | 'hatch'>, string>> = {
  ink: '#1d2b33',
  soft: '#5b6a70',
  line: '#cfc9ba',
  hair: '#e5e0d3',
  dye: '#1b4f8f',
  'dye-soft': '#e3ebf5',
  sheet: '#ffffff',
  paper: '#f6f4ee',
};
const colour = (ink: Ink): string => (ink === 'none' || ink === 'hatch' ? INKS.paper : INKS[ink]);

/** A scene as vectors, scaled to `width` points with its upper left corner at (x, y). */
export function drawScene(pdf: PDFKit.PDFDocument, scene: Scene, x: number, y: number, width: number): void {
  pdf
    .save()
    .translate(x, y)
    .scale(width / scene.width);
  for (const m of scene.marks) drawMark(pdf, m);
  pdf.restore();
}

function drawMark(pdf: PDFKit.PDFDocument, m: Mark): void {
  if (m.is === 'text') {
    pdf
      .font(m.bold ? 'bold' : 'regular')
      .fontSize(m.size)
      .fillColor(colour(m.ink));
    const w = pdf.widthOfString(m.text);
    const left = m.anchor === 'end' ? m.x - w : m.anchor === 'middle' ? m.x - w / 2 : m.x;
    pdf.text(m.text, left, m.y, { lineBreak: false, baseline: 'alphabetic' });
    return;
  }
  const outline = () => {
    if (m.is === 'rect') pdf.rect(m.x, m.y, m.w, m.h);
    else if (m.is === 'circle') pdf.circle(m.x, m.y, m.r);
    else pdf.path(m.d);
  };
  if (m.fill === 'hatch') hatch(pdf, m, outline);
  else if (m.fill !== 'none') {
    outline();
    pdf.fill(colour(m.fill));
  }
  if (m.stroke === 'none' || m.width === 0) return;
  outline();
  pdf.lineWidth(m.width).strokeColor(colour(m.stroke));
  const dash = m.is === 'path' && m.dash ? m.dash.split(' ').map(Number) : null;
  if (dash) pdf.dash(dash[0] ?? 3, { space: dash[1] ?? 3 });
  pdf.stroke();
  if (dash) pdf.undash();
}

/** No paper: strokes at 45 degrees within the outline. */
function hatch(pdf: PDFKit.PDFDocument, m: Exclude<Mark, { is: 'text' }>, outline: () => void): void {
  const numbers = m.is === 'path' ? (m.d.match(/-?\d+(\.\d+)?/g) ?? []).map(Number) : [];
  const xs = numbers.filter((_, i) => i % 2 === 0);
  const ys = numbers.filter((_, i) => i % 2 === 1);
  const box =
    m.is === 'rect'
      ? [m.x, m.y, m.x + m.w, m.y + m.h]
      : m.is === 'circle'
        ? [m.x - m.r, m.y - m.r, m.x + m.r, m.y + m.r]
        : [Math.min(...xs), Math.min(...ys), Math.max(...xs), Math.max(...ys)];
  const [x0 = 0, y0 = 0, x1 = 0, y1 = 0] = box;
  pdf.save();
  outline();
  pdf.clip();
  for (let x = x0 - (y1 - y0); x < x1; x += 6) pdf.moveTo(x, y1).lineTo(x + (y1 - y0), y0);
  pdf.lineWidth(0.8).strokeColor(INKS.ink).stroke();
  pdf.restore();
}
