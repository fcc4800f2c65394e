import { inEngineUnits } from '../../engine/index.ts';
import { measured, type Units } from '../measure.ts';
import type { Ink, Mark, Scene } from '../model.ts';
import { r } from './axis.ts';
import { type CrackPlace, crackPlaceOf } from './crack-place-read.ts';

const WIDTH = 560;
const HEIGHT = 236;
/** The plate from the front, and the section at the crack, enlarged. */
const FRONT = { x: 24, y: 22, w: 250, h: 150 };
const SECTION = { x: 330, y: 40, w: 190, h: 120 };

/** A length without the zeros that say nothing: a drawing shows what was written. */
const said = (value: number, units: Units): string => measured(value, 'length', units).replace(/\.?0+(?= )/, '');
const path = (d: string, stroke: Ink, width: number, fill: Ink = 'none', title?: string): Mark => ({
  is: 'path',
  d,
  stroke,
  fill,
  width,
  ...(title ? { title } : {}),
});
const label = (x: number, y: number, words: string, anchor: 'start' | 'middle' | 'end', ink: Ink = 'soft'): Mark => ({
  is: 'text',
  x,
  y,
  text: words,
  ink,
  size: 12,
  anchor,
  bold: ink === 'dye',
});
/** A dimension line with its ends, and the words under or beside it. */
const across = (x1: number, x2: number, y: number, words: string): Mark[] => [
  path(`M${r(x1)} ${r(y - 4)}V${r(y + 4)}M${r(x1)} ${r(y)}H${r(x2)}M${r(x2)} ${r(y - 4)}V${r(y + 4)}`, 'soft', 1),
  label((x1 + x2) / 2, y + 16, words, 'middle'),
];
const upright = (x: number, y1: number, y2: number, words: string): Mark[] => [
  path(`M${r(x - 4)} ${r(y1)}H${r(x + 4)}M${r(x)} ${r(y1)}V${r(y2)}M${r(x - 4)} ${r(y2)}H${r(x + 4)}`, 'soft', 1),
  label(x + 8, (y1 + y2) / 2 + 4, words, 'start'),
];
const arrow = (x: number, y: number, up: boolean): Mark => {
  const s = up ? 1 : -1;
  return path(
    `M${r(x)} ${r(y)}V${r(y - 14 * s)}M${r(x - 4)} ${r(y - 9 * s)}L${r(x)} ${r(y - 14 * s)}L${r(x + 4)} ${r(y - 9 * s)}`,
    'soft',
    1.2,
  );
};

/**
 * The place of a crack, drawn to scale from a growth document as far as it is written: the plate from the front with
 * its hole and crack, and the section at the crack, enlarged. Null until the lengths that it needs are there and fit.
 */
export function crackPlaceScene(document: unknown, units: Units): Scene | null {
  const p = crackPlaceOf(engineUnits(document));
  if (!p) return null;
  const marks = [...front(p, units), ...(section(p, units) ?? [])];
  return { title: 'The place, to scale', description: inWords(p, units), width: WIDTH, height: HEIGHT, marks };
}
function engineUnits(document: unknown): unknown {
  try {
    return inEngineUnits(document);
  } catch {
    return null;
  }
}

function front(p: CrackPlace, units: Units): Mark[] {
  const lug = p.shape === 'lug_through';
  const tall = p.diameter ? (FRONT.h * 0.8) / p.diameter : Number.POSITIVE_INFINITY;
  const k = Math.min((lug ? FRONT.h : FRONT.w) / p.width, tall);
  const wide = p.width * k;
  const left = FRONT.x + (FRONT.w - wide) / 2;
  const x = (at: number) => left + at * k;
  const bottom = FRONT.y + FRONT.h;
  const middle = FRONT.y + FRONT.h / 2;
  const [from, to] = [r(left), r(left + wide)];
  const outline = lug
    ? `M${from} ${bottom}V${middle}A${r(wide / 2)} ${r(wide / 2)} 0 0 1 ${to} ${middle}V${bottom}Z`
    : `M${from} ${FRONT.y}H${to}V${bottom}H${from}Z`;
  const radius = p.diameter ? (p.diameter / 2) * k : 0;
  const round = r(radius);
  const hole: Mark[] = p.diameter
    ? [
        { is: 'circle', x: r(x(p.hole)), y: middle, r: round, stroke: 'ink', fill: 'paper', width: 1.3 },
        label(r(x(p.hole)), r(middle - radius - 6), said(p.diameter, units), 'middle'),
      ]
    : [];
  const cracks = p.cracks.map((c) =>
    path(`M${r(x(c.from))} ${middle}H${r(x(c.to))}`, 'dye', 2.4, 'none', 'the first flaw'),
  );
  const pulls = [0.2, 0.5, 0.8].flatMap((at) => [
    ...(lug ? [] : [arrow(left + wide * at, FRONT.y - 3, true)]),
    arrow(left + wide * at, bottom + 3, false),
  ]);
  return [
    path(outline, 'ink', 1.3, 'sheet'),
    ...hole,
    ...cracks,
    ...pulls,
    ...across(left, left + wide, bottom + 26, said(p.width, units)),
  ];
}

/** Around the crack: what is cut open is drawn as large as fits, and says how much larger than the front it is. */
function section(p: CrackPlace, units: Units): Mark[] | null {
  const { c, a, thickness, sort } = p;
  if (c === null) return [label(SECTION.x, SECTION.y + 20, 'The first flaw has no length yet.', 'start')];
  const depth = a ?? thickness;
  const reach = Math.max(c * (sort === 'surface' ? 4 : 2.4), thickness * 0.8);
  const k = Math.min(SECTION.w / reach, SECTION.h / thickness);
  const t = thickness * k;
  // Room for the depth beside the crack.
  const w = Math.min(SECTION.w, Math.max(reach * k, c * k + 100));
  const top = SECTION.y + (SECTION.h - t) / 2;
  const left = SECTION.x;
  const times = Math.round(((k * p.width) / FRONT.w) * 10) / 10;
  const cx = c * k;
  const ay = depth * k;
  const mid = left + w / 2;
  const body: Record<typeof sort, string> = {
    through: `M${left} ${r(top)}h${r(cx)}v${r(t)}h${r(-cx)}Z`,
    'through middle': `M${left} ${r(top)}h${r(cx)}v${r(t)}h${r(-cx)}Z`,
    corner: `M${left} ${r(top)}h${r(cx)}A${r(cx)} ${r(ay)} 0 0 1 ${left} ${r(top + ay)}Z`,
    bore: `M${left} ${r(top + t / 2 - ay)}A${r(cx)} ${r(ay)} 0 0 1 ${left} ${r(top + t / 2 + ay)}Z`,
    surface: `M${r(mid - cx)} ${r(top)}A${r(cx)} ${r(ay)} 0 0 0 ${r(mid + cx)} ${r(top)}Z`,
    none: '',
  };
  const length = said(c, units);
  const under = top + t + 14;
  return [
    label(left, SECTION.y - 20, `section at the crack, ${times} times larger`, 'start'),
    path(`M${left} ${r(top)}h${r(w)}v${r(t)}h${r(-w)}`, 'ink', 1.2, 'sheet'),
    path(
      `M${left} ${r(top)}v${r(t)}`,
      'ink',
      p.diameter || sort === 'through middle' || sort === 'surface' ? 1.2 : 1.6,
    ),
    ...(body[sort] ? [path(body[sort], 'dye', 1.6, 'dye-soft', 'the first flaw')] : []),
    ...(sort === 'surface'
      ? across(mid - cx, mid + cx, under, `2c ${said(2 * c, units)}`)
      : across(left, left + cx, under, `c ${length}`)),
    ...(a === null ? [] : depthMark(sort, left, mid, cx, top, ay, t, said(a, units))),
    ...upright(left + w + 12, top, top + t, said(thickness, units)),
  ];
}
function depthMark(
  sort: CrackPlace['sort'],
  left: number,
  mid: number,
  cx: number,
  top: number,
  ay: number,
  t: number,
  words: string,
): Mark[] {
  if (sort === 'bore') return upright(left + cx + 10, top + t / 2 - ay, top + t / 2 + ay, `2a, a ${words}`);
  return upright((sort === 'surface' ? mid : left) + cx + 10, top, top + ay, `a ${words}`);
}

function inWords(p: CrackPlace, units: Units): string {
  const m = (v: number) => said(v, units);
  const hole = p.diameter ? ` with a hole of ${m(p.diameter)}` : '';
  const plate = `A plate ${m(p.width)} wide and ${m(p.thickness)} thick${hole}.`;
  if (p.c === null) return plate;
  const depth = p.a === null ? 'through the thickness' : `${m(p.a)} deep`;
  return `${plate} The first flaw is ${m(p.c)} long, ${depth}.`;
}
