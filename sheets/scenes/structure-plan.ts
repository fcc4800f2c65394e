import type { teardown } from '../../engine/index.ts';
import type { Ink, Mark, Scene, Seen, Shown, TableBlock } from '../model.ts';
import { joinKind, PART_KIND } from '../teardown/words.ts';
import { r, text } from './axis.ts';
import { wideOf } from './plot.ts';

type Map_ = teardown.StructureMap;
type Part = teardown.Part;
type Join = teardown.Join;
export type ShownSide = 'left' | 'right' | 'both';
type Point = readonly [x_mm: number, y_mm: number];

const SIZE = 14;
const LINE = 18;
const MARGIN = 10;
/** Lines of names below the wing. */
const LABEL_LINES = 3;

/** Where a place of the map lies in the picture: seen from above, nose up, starboard on the right. */
export interface PlanFrame {
  readonly side: ShownSide;
  readonly width: number;
  readonly height: number;
  /** Lower edge of the wing, where the names begin. */
  readonly foot: number;
  readonly scale: number;
  at(p: Point): readonly [number, number];
}
const ofSide = (thing: { readonly side: ShownSide }, side: ShownSide): boolean =>
  side === 'both' || thing.side === side || thing.side === 'both';

/** The frame that holds all of one side, or of both; the body that stays is cut at its edges. */
export function planFrame(map: Map_, side: ShownSide, width: number): PlanFrame {
  const own = map.parts.filter((p) => ofSide(p, side) && !p.stays);
  const places = (own.length ? own : map.parts).flatMap((p) => p.outline as readonly Point[]);
  const xs = places.map(([x]) => x);
  const ys = places.map(([, y]) => y);
  const [x0, x1] = [Math.min(...xs), Math.max(...xs)];
  const own0 = Math.min(...ys);
  const own1 = Math.max(...ys);
  // The centre line belongs to a half wing too, so that it is seen where it is fixed.
  const [y0, y1] = [side === 'right' ? Math.min(0, own0) : own0, side === 'left' ? Math.max(0, own1) : own1];
  const scale = (width - 2 * MARGIN) / Math.max(1, y1 - y0);
  const top = 24;
  const foot = top + Math.max(1, x1 - x0) * scale;
  const clampTo = (v: number, low: number, high: number) => Math.min(high, Math.max(low, v));
  return {
    side,
    width,
    scale,
    foot,
    height: Math.ceil(foot + 12 + LABEL_LINES * LINE + 6),
    at: ([x, y]) => [
      r(MARGIN + (clampTo(y, y0, y1) - y0) * scale),
      r(top + (clampTo(x, x0 - 10 / scale, x1 + 4 / scale) - x0) * scale),
    ],
  };
}

const dOf = (f: PlanFrame, points: readonly Point[], closed: boolean): string =>
  `${points.map((p, i) => `${i ? 'L' : 'M'}${f.at(p).join(' ')}`).join('')}${closed ? 'Z' : ''}`;

const WEIGHT: Partial<Record<Part['kind'], readonly [Ink, number, Ink]>> = {
  spar: ['ink', 1.5, 'none'],
  cap: ['ink', 1.2, 'none'],
  skin: ['soft', 0.8, 'none'],
  rib: ['soft', 0.8, 'none'],
  stringer: ['soft', 0.8, 'none'],
  tank: ['ink', 1.2, 'paper'],
  nose_section: ['ink', 1.2, 'paper'],
};
/** Of level 2 and lower a part lies on the lower face: hidden from above, and dashed as on a drawing. */
const HIDDEN = 2;
function partMark(f: PlanFrame, p: Part): Mark {
  const [stroke, width, fill] = p.stays ? (['ink', 1.3, 'none'] as const) : (WEIGHT[p.kind] ?? ['ink', 0.9, 'none']);
  return {
    is: 'path',
    id: `part:${p.id}`,
    d: dOf(f, p.outline as readonly Point[], true),
    stroke,
    fill,
    width,
    title: p.name,
    ...(p.level <= HIDDEN && !p.stays ? { dash: '5 3' } : {}),
  };
}
const LEAST_PITCH = 3;
function joinMark(f: PlanFrame, j: Join): Mark {
  const title = `${j.name}: ${j.fasteners.count} ${joinKind(j.fasteners.kind, j.fasteners.count)}`;
  const common = { id: `join:${j.id}`, stroke: 'ink' as const, title };
  const [x, y] = f.at(j.line[0] as Point);
  if (j.line.length === 1) return { is: 'circle', ...common, x, y, r: 3.2, fill: 'sheet', width: 1.2 };
  const pitch = (j.fasteners.pitch_mm ?? 0) * f.scale;
  const dash = pitch >= LEAST_PITCH ? { dash: `${r(pitch * 0.6)} ${r(pitch * 0.4)}` } : {};
  return { is: 'path', ...common, d: dOf(f, j.line as readonly Point[], false), fill: 'none', width: 1.1, ...dash };
}

/**
 * The wing from above as its structure map has it, to scale: parts as outlines, joins as lines. Marks carry the id of
 * their part or join, so that a state of the work can be shown on the same picture.
 */
export function structurePlan(map: Map_, { side, width = 440 }: { side: ShownSide; width?: number }): Scene {
  const f = planFrame(map, side, width);
  const parts = map.parts.filter((p) => ofSide(p, side));
  const joins = map.joins.filter((j) => ofSide(j, side));
  const ends =
    side === 'both'
      ? [text(MARGIN, 16, 'left', { ink: 'soft' }), text(width - MARGIN, 16, 'right', { ink: 'soft', anchor: 'end' })]
      : [
          text(side === 'left' ? MARGIN : width - MARGIN, 16, `${side} tip`, {
            ink: 'soft',
            anchor: side === 'left' ? 'start' : 'end',
          }),
        ];
  return {
    title: side === 'both' ? 'The wing from above' : `The ${side} wing from above`,
    description: `${map.title}, ${side === 'both' ? 'left and right wing' : `${side} wing`} from above, nose up: ${parts.length} parts, ${joins.length} rows of fasteners.`,
    width,
    height: f.height,
    marks: [
      ...[...parts].sort((a, b) => a.level - b.level).map((p) => partMark(f, p)),
      ...joins.map((j) => joinMark(f, j)),
      ...ends,
    ],
    table: thingsTable(parts, joins, {}),
  };
}

export interface PlanState {
  readonly off?: readonly string[];
  readonly open?: readonly string[];
  readonly clipped?: readonly string[];
  readonly comesOff?: readonly string[];
  /** What is named on a leader line: ids of parts, joins. */
  readonly next?: readonly string[];
}
const SEEN_WORDS: Readonly<Record<Seen, string>> = {
  off: 'off',
  open: 'open',
  clipped: 'clipped, not riveted',
  'comes-off': 'comes off',
  next: 'next',
};
/** How each thing is seen, by the id that its marks carry. What is next stands before all else. */
function seenIn(state: PlanState): Record<string, Seen> {
  const seen: Record<string, Seen> = {};
  for (const id of state.comesOff ?? []) {
    seen[`part:${id}`] = 'comes-off';
    seen[`join:${id}`] = 'comes-off';
  }
  for (const id of state.off ?? []) seen[`part:${id}`] = 'off';
  for (const id of state.open ?? []) seen[`join:${id}`] = 'open';
  for (const id of state.clipped ?? []) seen[`join:${id}`] = 'clipped';
  for (const id of state.next ?? []) {
    seen[`part:${id}`] = 'next';
    seen[`join:${id}`] = 'next';
  }
  return seen;
}

/** A state of the picture: names on leaders only for what is next. */
export function planShown(map: Map_, frame: PlanFrame, state: PlanState): Shown {
  const things = new Map<string, { readonly name: string; readonly at: Point }>();
  for (const id of state.next ?? []) {
    const part = map.parts.find((p) => p.id === id);
    const join = part ? undefined : map.joins.find((j) => j.id === id);
    const points = (part?.outline ?? join?.line ?? []) as readonly Point[];
    if (points.length) things.set(id, { name: (part ?? join)!.name, at: part ? middle(points) : onLine(points) });
  }
  const said = (n: number, one: string) => `${n} ${one}${n === 1 ? '' : 's'}`;
  const counts = [
    `${said(state.off?.length ?? 0, 'part')} off`,
    `${said(state.open?.length ?? 0, 'row')} open`,
    ...(state.clipped?.length ? [`${said(state.clipped.length, 'row')} clipped`] : []),
    ...(state.comesOff?.length ? [`${state.comesOff.length} come off on this plan`] : []),
  ];
  const names = [...things.values()].map((t) => t.name);
  return {
    seen: seenIn(state),
    labels: labels(
      frame,
      [...things.values()].map((t) => ({ name: t.name, at: frame.at(t.at) })),
    ),
    height: things.size
      ? Math.ceil(lineOf(frame, Math.min(things.size, LABEL_LINES) - 1) + 6)
      : Math.ceil(frame.foot + 8),
    description: `The wing from above: ${counts.join(', ')}.${names.length ? ` Marked: ${names.join(', ')}.` : ''}`,
  };
}
const mid = (values: readonly number[]): number => (Math.min(...values) + Math.max(...values)) / 2;
const middle = (points: readonly Point[]): Point => [mid(points.map((p) => p[0])), mid(points.map((p) => p[1]))];
const onLine = (points: readonly Point[]): Point => {
  const [a, b] = [points[Math.floor((points.length - 1) / 2)]!, points[Math.ceil((points.length - 1) / 2)]!];
  return [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
};

/** Names below the wing, the one furthest to the right highest; each begins left of those above it, so that no leader crosses a name. */
function labels(
  f: PlanFrame,
  things: readonly { readonly name: string; readonly at: readonly [number, number] }[],
): Mark[] {
  const most = things.length > LABEL_LINES ? LABEL_LINES - 1 : things.length;
  const shown = [...things.slice(0, most)].sort((a, b) => b.at[0] - a.at[0]);
  const bend = f.foot + 8;
  let before = f.width;
  const marks = shown.flatMap(({ name, at: [x, y] }, i): Mark[] => {
    const words = cut(name, f.width - 2 * MARGIN - 4);
    const wide = wideOf(words, SIZE);
    const left = Math.max(MARGIN + 6, Math.min(x + 5, f.width - MARGIN - wide, before - 10));
    before = left;
    const base = lineOf(f, i);
    const down = r(left - 5);
    return [
      { is: 'path', d: `M${x} ${y}L${down} ${r(bend)}L${down} ${r(base)}`, stroke: 'dye', fill: 'none', width: 0.9 },
      text(r(left), r(base), words, { ink: 'dye', size: SIZE, bold: true }),
    ];
  });
  if (things.length > most)
    marks.push(
      text(MARGIN + 6, r(lineOf(f, most)), `and ${things.length - most} more, marked`, {
        ink: 'dye',
        size: SIZE,
        bold: true,
      }),
    );
  return marks;
}
const lineOf = (f: PlanFrame, i: number): number => f.foot + 12 + LINE * (i + 0.7);
const cut = (words: string, width: number): string => {
  const most = Math.floor(width / wideOf('m', SIZE));
  return words.length > most ? `${words.slice(0, most - 4).trimEnd()} ...` : words;
};

/** The same as words: each part and row with how it is seen. */
export function thingsTable(
  parts: readonly Part[],
  joins: readonly Join[],
  seen: Readonly<Record<string, Seen>>,
): TableBlock {
  const state = (id: string, there: string) => (seen[id] ? SEEN_WORDS[seen[id]] : there);
  return {
    block: 'table',
    title: 'Parts and rows of the picture',
    columns: [
      { key: 'what', title: 'What', align: 'left' },
      { key: 'kind', title: 'Kind', align: 'left' },
      { key: 'state', title: 'State', align: 'left' },
    ],
    rows: [
      ...parts.map((p) => ({
        id: `part:${p.id}`,
        cells: {
          what: { is: 'text' as const, text: p.name },
          kind: { is: 'text' as const, text: PART_KIND[p.kind] },
          state: { is: 'text' as const, text: state(`part:${p.id}`, 'on') },
        },
      })),
      ...joins.map((j) => ({
        id: `join:${j.id}`,
        cells: {
          what: { is: 'text' as const, text: j.name },
          kind: { is: 'text' as const, text: joinKind(j.fasteners.kind, j.fasteners.count) },
          state: { is: 'text' as const, text: state(`join:${j.id}`, 'closed') },
        },
      })),
    ],
    empty: 'No part is on the map.',
  };
}
