import { decimals } from '../measure.ts';
import type { Ink, Mark } from '../model.ts';
import { line, r, text } from './axis.ts';

/** What the charts of usage and growth share: axes as on a workshop drawing, lines, labels that keep apart. */
export type At = (value: number) => number;
export interface Frame {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}
export type Axis = At & { ticks(count?: number): number[]; range(): number[] };

/** Rules across at the ticks of a linear scale, their figures on the left, what they measure above. */
export function levelAxis(y: Axis, frame: Frame, title: string, say: (v: number) => string, ticks = 5): Mark[] {
  const marks: Mark[] = [text(frame.left - 6, frame.top - 10, title, { ink: 'soft', size: 11, anchor: 'start' })];
  for (const v of y.ticks(ticks))
    marks.push(
      line(frame.left, y(v), frame.right, y(v), 'hair'),
      text(frame.left - 6, r(y(v) + 4), say(v), { ink: 'soft', size: 11, anchor: 'end' }),
    );
  return marks;
}
/** The lower axis: a thin line, its ticks, what it measures at the right end below them. */
export function baseAxis(x: Axis, frame: Frame, title: string, say: (v: number) => string, ticks = 6): Mark[] {
  const marks: Mark[] = [line(frame.left, frame.bottom, frame.right, frame.bottom, 'soft', 0.8)];
  for (const v of x.ticks(ticks))
    marks.push(
      line(x(v), frame.bottom, x(v), frame.bottom + 4, 'soft', 0.8),
      text(r(x(v)), frame.bottom + 16, say(v), { ink: 'soft', size: 11, anchor: 'middle' }),
    );
  marks.push(text(frame.right, frame.bottom + 31, title, { ink: 'soft', size: 11, anchor: 'end' }));
  return marks;
}
/** Tens of a logarithmic axis; every other one where they are many. */
export function decades(low: number, high: number, most = 8): number[] {
  const [from, to] = [Math.floor(Math.log10(low)), Math.ceil(Math.log10(high))];
  const every = Math.max(1, Math.ceil((to - from) / most));
  const all: number[] = [];
  for (let p = from; p <= to; p += every) all.push(p);
  return all;
}
/** "100", "0.01", "0.000 1" */
export const powerOfTen = (p: number): string => decimals(Number(`1e${p}`), Math.max(0, -p));

export type Point = readonly [x: number, y: number];
const MOST_POINTS = 220;
/** Points that lie closer than a fifth of a unit to the last drawn one say nothing more. */
export function thinned(points: readonly Point[]): Point[] {
  const kept: Point[] = [];
  for (const [i, p] of points.entries()) {
    const last = kept.at(-1);
    if (!last || i === points.length - 1 || Math.hypot(p[0] - last[0], p[1] - last[1]) > 0.2) kept.push(p);
  }
  if (kept.length <= MOST_POINTS) return kept;
  const step = kept.length / MOST_POINTS;
  return [...Array.from({ length: MOST_POINTS }, (_, i) => kept[Math.floor(i * step)]!), kept.at(-1)!];
}
export const pathOf = (points: readonly Point[]): string =>
  thinned(points)
    .map(([x, y], i) => `${i ? 'L' : 'M'}${r(x)} ${r(y)}`)
    .join('');
export function polyline(
  points: readonly Point[],
  stroke: Ink = 'ink',
  width = 1.4,
  dash?: string,
  title?: string,
): Mark[] {
  if (points.length < 2) return [];
  return [
    {
      is: 'path',
      d: pathOf(points),
      stroke,
      fill: 'none',
      width,
      ...(dash ? { dash } : {}),
      ...(title ? { title } : {}),
    },
  ];
}
/** The stretch between two lines over the same places. */
export function band(upper: readonly Point[], lower: readonly Point[], fill: Ink, title?: string): Mark[] {
  if (upper.length < 2 || lower.length < 2) return [];
  const back = thinned(lower)
    .reverse()
    .map(([x, y]) => `L${r(x)} ${r(y)}`)
    .join('');
  return [{ is: 'path', d: `${pathOf(upper)}${back}Z`, stroke: 'none', fill, width: 0, ...(title ? { title } : {}) }];
}

export interface Label {
  readonly y: number;
  readonly text: string;
  readonly ink?: Ink;
  readonly bold?: boolean;
}
/** Labels down one edge, moved apart so that none covers another, within the frame. */
export function labelsAt(x: number, all: readonly Label[], frame: Frame, anchor: 'start' | 'end' = 'start'): Mark[] {
  const GAP = 14;
  const sorted = [...all].sort((a, b) => a.y - b.y);
  const at = sorted.map((l) => l.y);
  for (let i = 1; i < at.length; i++) at[i] = Math.max(at[i]!, at[i - 1]! + GAP);
  const over = (at.at(-1) ?? 0) - frame.bottom;
  if (over > 0) {
    at[at.length - 1]! -= over;
    for (let i = at.length - 2; i >= 0; i--) at[i] = Math.min(at[i]!, at[i + 1]! - GAP);
  }
  return sorted.map((l, i) =>
    text(x, r(at[i]! + 4), l.text, { ink: l.ink ?? 'ink', size: 11, anchor, ...(l.bold ? { bold: true } : {}) }),
  );
}
/** Line patterns for several lines that are told apart without colour. */
export const DASHES = [undefined, '6 3', '2 3', '9 3 2 3', '1 4', '12 4'] as const;
export const dashOf = (i: number): string | undefined => DASHES[i % DASHES.length];
/** How wide words are drawn, about. */
export const wideOf = (words: string, size = 11): number => words.length * size * 0.56;
/** So many of a long row, spread evenly, first and last among them. */
export function pickedOf<T>(all: readonly T[], rows: number): T[] {
  const step = Math.max(1, (all.length - 1) / (rows - 1));
  const at = Array.from({ length: rows }, (_, k) => Math.min(all.length - 1, Math.round(k * step)));
  return [...new Set(at)].flatMap((k) => (all[k] === undefined ? [] : [all[k]]));
}
/** So many of a row, spread evenly over what it runs along: where points crowd, few of them stand. */
export function spreadOf<T>(all: readonly T[], rows: number, along: (item: T) => number): T[] {
  const [first, last] = [all[0], all.at(-1)];
  if (first === undefined || last === undefined) return [];
  const [from, to] = [along(first), along(last)];
  const at = new Set<number>();
  for (let k = 0, i = 0; k < rows; k++) {
    const wanted = from + ((to - from) * k) / (rows - 1);
    while (i < all.length - 1 && along(all[i]!) < wanted) i++;
    at.add(k === rows - 1 ? all.length - 1 : i);
  }
  return [...at].map((i) => all[i]!);
}
