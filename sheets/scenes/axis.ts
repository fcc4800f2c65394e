import { scaleLinear } from 'd3-scale';
import { type Day, dayNumber } from '../../engine/index.ts';
import type { Mark } from '../model.ts';

export const text = (x: number, y: number, words: string, more: Partial<Extract<Mark, { is: 'text' }>> = {}): Mark => ({
  is: 'text',
  x,
  y,
  text: words,
  ink: 'ink',
  size: 12,
  anchor: 'start',
  ...more,
});
export const line = (
  x1: number,
  y1: number,
  x2: number,
  y2: number,
  stroke: Extract<Mark, { is: 'path' }>['stroke'] = 'ink',
  width = 1,
  dash?: string,
): Mark => ({
  is: 'path',
  d: `M${r(x1)} ${r(y1)}L${r(x2)} ${r(y2)}`,
  stroke,
  fill: 'none',
  width,
  ...(dash ? { dash } : {}),
});
export const r = (v: number): number => Math.round(v * 10) / 10;
export const newYear = (year: number): number => dayNumber(`${year}-01-01` as Day);

/** A time axis in years, with rules between `top` and `bottom`. */
export function yearAxis(from: number, to: number, left: number, right: number, top: number, bottom: number) {
  const x = scaleLinear()
    .domain([from, Math.max(to, from + 365)])
    .range([left, right])
    .clamp(true);
  const first = Math.ceil(1970 + from / 365.2425);
  const last = Math.floor(1970 + Math.max(to, from + 365) / 365.2425);
  const every = [1, 2, 5, 10, 20, 50].find((n) => (last - first) / n <= (right - left) / 60) ?? 100;
  const marks: Mark[] = [];
  for (let y = Math.ceil(first / every) * every; y <= last; y += every) {
    const at = x(newYear(y));
    marks.push(
      line(at, top, at, bottom, 'hair'),
      text(at, bottom + 15, String(y), { ink: 'soft', size: 11, anchor: 'middle' }),
    );
  }
  return { x, marks };
}
