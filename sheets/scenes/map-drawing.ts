/**
 * A structure map while it is being drawn: whatever of it is whole enough to be drawn, and the way from a place of the
 * picture back to a place of the wing. Plan coordinates are mm, x aft, y starboard; the picture is nose up.
 */
export type PlanPoint = readonly [x_mm: number, y_mm: number];
export interface DrawnThing {
  /** Its place in the list of parts, or of joins. */
  readonly index: number;
  readonly name: string;
  readonly d: string;
  readonly stays: boolean;
  /** On the lower face: dashed, as on a drawing. */
  readonly hidden: boolean;
}
export interface DrawingFrame {
  readonly width: number;
  readonly height: number;
  readonly x0: number;
  readonly y0: number;
  readonly scale: number;
}
type Fields = Readonly<Record<string, unknown>>;
const fields = (v: unknown): Fields => (typeof v === 'object' && v !== null && !Array.isArray(v) ? (v as Fields) : {});
const list = (v: unknown): readonly unknown[] => (Array.isArray(v) ? v : []);
const text = (v: unknown): string => (typeof v === 'string' ? v : '');
const finite = (v: unknown): v is number => typeof v === 'number' && Number.isFinite(v);
const MARGIN = 14;
const WIDTH = 760;
/** Nothing is drawn yet: a half wing of 5 m has room. */
const EMPTY: readonly PlanPoint[] = [
  [0, 0],
  [1600, 5000],
];

/** The points of an outline or a line that are whole; others are left out until they are. */
export const pointsOf = (v: unknown): PlanPoint[] =>
  list(v).flatMap((p): PlanPoint[] => {
    const [x, y] = list(p);
    return finite(x) && finite(y) ? [[x, y]] : [];
  });
const shown = (thing: Fields, side: string): boolean => side === 'both' || thing.side === side || thing.side === 'both';

/** The frame that holds what is drawn of a side. */
export function drawingFrame(draft: unknown, side: 'left' | 'right' | 'both'): DrawingFrame {
  const parts = list(fields(draft).parts)
    .map(fields)
    .filter((p) => shown(p, side) && p.stays !== true);
  const drawn = parts.flatMap((p) => pointsOf(p.outline));
  const all = drawn.length ? drawn : EMPTY;
  const xs = all.map(([x]) => x);
  const ys = all.map(([, y]) => y);
  const [x0, x1, y0, y1] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
  const scale = (WIDTH - 2 * MARGIN) / Math.max(100, y1 - y0);
  const height = Math.min(WIDTH, Math.ceil(Math.max(100, x1 - x0) * scale) + 2 * MARGIN);
  return { width: WIDTH, height, x0, y0, scale };
}
const r = (v: number): number => Math.round(v * 10) / 10;
/** Where a place of the wing lies in the picture. */
export const inPicture = (f: DrawingFrame, [x, y]: PlanPoint): readonly [number, number] => [
  r(MARGIN + (y - f.y0) * f.scale),
  r(MARGIN + (x - f.x0) * f.scale),
];
/** The place of the wing under a place of the picture, to 5 mm. `share` runs from 0 to 1 over width and height. */
export const onWing = (f: DrawingFrame, share: readonly [across: number, down: number]): PlanPoint => {
  const near = (v: number) => Math.round(v / 5) * 5;
  return [near((share[1] * f.height - MARGIN) / f.scale + f.x0), near((share[0] * f.width - MARGIN) / f.scale + f.y0)];
};

/** A point moved by an arrow key: up is towards the nose. Null for other keys. */
export function nudged([x, y]: PlanPoint, key: string, fine: boolean): PlanPoint | null {
  const step = fine ? 1 : 10;
  if (key === 'ArrowUp') return [x - step, y];
  if (key === 'ArrowDown') return [x + step, y];
  if (key === 'ArrowLeft') return [x, y - step];
  if (key === 'ArrowRight') return [x, y + step];
  return null;
}

/** A point between two others, where an outline gets one more. */
export const between = (a: PlanPoint, b: PlanPoint): PlanPoint => [
  Math.round((a[0] + b[0]) / 2),
  Math.round((a[1] + b[1]) / 2),
];

/** Where a new part, or a new row, begins: in the middle of the picture. */
export function freshOutline(f: DrawingFrame): PlanPoint[] {
  const [x, y] = onWing(f, [0.5, 0.5]);
  return [
    [x - 60, y - 150],
    [x - 60, y + 150],
    [x + 60, y + 150],
    [x + 60, y - 150],
  ];
}
export const freshLine = (f: DrawingFrame): PlanPoint[] => {
  const [x, y] = onWing(f, [0.5, 0.5]);
  return [
    [x, y - 150],
    [x, y + 150],
  ];
};

/** Parts and rows of a side as they are drawn, lower ones first. */
export function mapDrawing(
  draft: unknown,
  side: 'left' | 'right' | 'both',
  f: DrawingFrame,
): { readonly parts: readonly DrawnThing[]; readonly joins: readonly DrawnThing[] } {
  const drawn = (of: unknown, place: 'outline' | 'line', close: string): (DrawnThing & { level: number })[] =>
    list(of).flatMap((v, index) => {
      const thing = fields(v);
      const points = pointsOf(thing[place]);
      if (!shown(thing, side) || points.length === 0) return [];
      const level = finite(thing.level) ? thing.level : 5;
      const at = points.map((p) => inPicture(f, p));
      const [x, y] = at[0]!;
      const d =
        at.length === 1
          ? `M${r(x - 3)} ${y}a3 3 0 1 0 6 0a3 3 0 1 0 -6 0Z`
          : `${at.map((p, i) => `${i ? 'L' : 'M'}${p.join(' ')}`).join('')}${close}`;
      const name = text(thing.name) || text(thing.id) || `number ${index + 1}`;
      return [{ index, name, d, level, stays: thing.stays === true, hidden: level <= 2 || thing.face === 'lower' }];
    });
  return {
    parts: drawn(fields(draft).parts, 'outline', 'Z').sort((a, b) => a.level - b.level),
    joins: drawn(fields(draft).joins, 'line', ''),
  };
}

const OTHER: Readonly<Record<string, string>> = { left: 'right', right: 'left', Left: 'Right', Right: 'Left' };
const otherHand = (words: string): string => words.replaceAll(/\b(left|right|Left|Right)\b/g, (w) => OTHER[w]!);

/** The same thing on the other wing: names and ids say the other hand, places lie on the other side. */
export function mirrored(thing: unknown): unknown {
  if (typeof thing === 'string') return otherHand(thing);
  if (Array.isArray(thing)) return thing.map(mirrored);
  if (typeof thing !== 'object' || thing === null) return thing;
  return Object.fromEntries(
    Object.entries(thing).map(([k, v]) => [
      k,
      (k === 'outline' || k === 'line') && Array.isArray(v)
        ? v.map((p) => (Array.isArray(p) && finite(p[1]) ? [p[0], p[1] === 0 ? 0 : -p[1]] : p))
        : mirrored(v),
    ]),
  );
}
