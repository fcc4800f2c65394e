import type { Mark, Scene } from '../model.ts';
import { line, text } from './axis.ts';

/** One part as drawn: left half of a wing of 500 from root (0) to tip (1), chord from nose (0) to tail (1). */
export interface PlanShape {
  readonly span: readonly [number, number];
  readonly chord: readonly [number, number];
}
export type WingPlan = Readonly<Record<string, PlanShape>>;
/** Where a kind of part lies if no structure map says better. Approximate. */
export const DEFAULT_PLAN: WingPlan = {
  inboard_spar: { span: [0, 0.56], chord: [0.34, 0.43] },
  outboard_spar: { span: [0.52, 0.97], chord: [0.35, 0.42] },
  rear_spar: { span: [0, 0.97], chord: [0.7, 0.74] },
  tank: { span: [0.28, 0.56], chord: [0.05, 0.33] },
  walkway_doubler: { span: [0, 0.12], chord: [0.46, 0.68] },
  flap: { span: [0, 0.42], chord: [0.76, 0.99] },
  aileron: { span: [0.46, 0.94], chord: [0.76, 0.99] },
  aileron_hinge: { span: [0.68, 0.72], chord: [0.72, 0.8] },
  splice: { span: [0.5, 0.58], chord: [0.32, 0.46] },
};
export interface PlanPart {
  readonly id: string;
  readonly what: string;
  readonly hand: 'left' | 'right' | 'none';
  readonly name: string;
  readonly standing: string;
  /** About when, if a forecast says so. */
  readonly about: string;
  readonly small: string;
  readonly act: boolean;
  readonly noPaper: boolean;
  /** True where a word belongs beside it. */
  readonly labelled: boolean;
}

const [ROOT_L, ROOT_R, SPAN, WIDTH, HEIGHT] = [528, 592, 480, 1120, 312];
const wordOf = (p: PlanPart): string => (p.about ? `${p.standing}, ${p.about}` : p.standing);
const nose = (s: number): number => 66 + 34 * s;
const tail = (s: number): number => 222 - 26 * s;
const at = (hand: 'left' | 'right', s: number, c: number): [number, number] => [
  hand === 'left' ? ROOT_L - s * SPAN : ROOT_R + s * SPAN,
  nose(s) + (tail(s) - nose(s)) * c,
];
const outline = (hand: 'left' | 'right', p: PlanShape): string => {
  const [[s0, s1], [c0, c1]] = [p.span, p.chord];
  const points = [at(hand, s0, c0), at(hand, s1, c0), at(hand, s1, c1), at(hand, s0, c1)];
  return `M${points.map(([x, y]) => `${x.toFixed(1)} ${y.toFixed(1)}`).join('L')}Z`;
};

/** The wing from above, nose up: left is left. Ink outlines; dye only where an act is needed; a hatch means no paper. */
export function wingPlan(parts: readonly PlanPart[], title: string, plan: WingPlan = DEFAULT_PLAN): Scene {
  const marks: Mark[] = [];
  const path = (
    d: string,
    stroke: 'ink' | 'soft' | 'line' | 'dye',
    fill: 'sheet' | 'paper' | 'hatch' | 'dye-soft',
    width: number,
    t?: string,
  ) => marks.push({ is: 'path', d, stroke, fill, width, ...(t ? { title: t } : {}) });
  path('M528 22C528 8 592 8 592 22L592 246C592 262 528 262 528 246Z', 'ink', 'sheet', 1.3);
  for (const hand of ['left', 'right'] as const) {
    const wing = parts.find((p) => p.what === 'wing' && p.hand === hand);
    path(
      outline(hand, { span: [0, 1], chord: [0, 1] }),
      wing?.act ? 'dye' : 'ink',
      'sheet',
      wing?.act ? 2.4 : 1.3,
      wing?.name,
    );
    for (const s of [0.14, 0.28, 0.42, 0.56, 0.7, 0.84]) {
      const [[x1, y1], [x2, y2]] = [at(hand, s, 0), at(hand, s, 1)];
      marks.push(line(x1, y1, x2, y2, 'line', 0.8));
    }
    for (const what of ['flap', 'aileron', 'outboard_spar']) {
      const p = plan[what];
      if (p && !parts.some((q) => q.what === what && q.hand === hand)) path(outline(hand, p), 'soft', 'sheet', 0.9);
    }
  }
  const unknown = new Map<string, number>();
  const drawn = new Map<string, [number, number]>();
  for (const p of parts) {
    if (p.hand === 'none') continue;
    if (p.what === 'wing') {
      drawn.set(p.id, at(p.hand, 0.75, 0.55));
      continue;
    }
    const k = unknown.get(p.hand) ?? 0;
    const shape = plan[p.what] ?? { span: [0.05 + 0.1 * k, 0.12 + 0.1 * k] as const, chord: [0.5, 0.62] as const };
    if (!plan[p.what]) unknown.set(p.hand, k + 1);
    path(
      outline(p.hand, shape),
      p.act ? 'dye' : 'ink',
      p.noPaper ? 'hatch' : p.act ? 'dye-soft' : 'sheet',
      p.act ? 2.4 : 1.5,
      `${p.name}: ${wordOf(p)}`,
    );
    drawn.set(p.id, at(p.hand, (shape.span[0] + shape.span[1]) / 2, shape.chord[1]));
  }
  for (const hand of ['left', 'right'] as const) {
    const shown = parts
      .filter((p) => p.labelled && p.hand === hand && drawn.has(p.id))
      .slice(0, 2)
      .sort((a, b) => Math.abs(drawn.get(b.id)![0] - 560) - Math.abs(drawn.get(a.id)![0] - 560));
    shown.forEach((p, i) => {
      const [x, y] = drawn.get(p.id)!;
      const centre = shown.length === 1 ? 270 : i === 0 ? 130 : 400;
      const lx = hand === 'left' ? centre : WIDTH - centre;
      marks.push(
        line(x, y, lx, 244, p.act ? 'dye' : 'soft', 0.9),
        ...[p.name, p.standing].map((words, k) =>
          text(lx, 258 + 15 * k, words, { anchor: 'middle', bold: true, ink: p.act ? 'dye' : 'ink' }),
        ),
        ...[p.about, p.small]
          .filter(Boolean)
          .map((words, k) => text(lx, 288 + 15 * k, words, { anchor: 'middle', ink: 'soft', size: 11 })),
      );
    });
  }
  marks.push(text(60, 30, 'left', { ink: 'soft' }), text(1060, 30, 'right', { ink: 'soft', anchor: 'end' }));
  return {
    title,
    width: WIDTH,
    height: HEIGHT,
    marks,
    description: `Wing from above. ${parts
      .filter((p) => p.labelled || p.noPaper)
      .map((p) => `${p.name}: ${wordOf(p)}${p.noPaper ? ', part of its life without paper' : ''}.`)
      .join(' ')}`,
    table: {
      block: 'table',
      title,
      columns: [
        { key: 'part', title: 'Part', align: 'left' },
        { key: 'word', title: 'Standing', align: 'left' },
        { key: 'paper', title: 'Papers', align: 'left' },
      ],
      rows: parts.map((p) => ({
        id: p.id,
        cells: {
          part: { is: 'text', text: p.name },
          word: { is: 'text', text: wordOf(p), small: p.small },
          paper: { is: 'text', text: p.noPaper ? 'some missing' : 'no gap declared' },
        },
      })),
      empty: 'No part is recorded.',
    },
  };
}
