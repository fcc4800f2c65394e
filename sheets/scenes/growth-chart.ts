import { scaleLinear } from 'd3-scale';
import type { growth } from '../../engine/index.ts';
import { number } from '../display.ts';
import { downward, type ShownProgramme, shownProgramme } from '../growth/in-force.ts';
import { ENDS, INTERACTIONS } from '../growth/words.ts';
import { inUnits, measured, measuredCell, quantity, type Units, unitOf, words } from '../measure.ts';
import type { Mark, Scene, TableBlock } from '../model.ts';
import { line, r, text } from './axis.ts';
import {
  baseAxis,
  type Frame,
  type Label,
  labelsAt,
  levelAxis,
  type Point,
  polyline,
  spreadOf,
  wideOf,
} from './plot.ts';

const [WIDTH, HEIGHT] = [960, 330];
const FRAME: Frame = { left: 62, right: 740, top: 46, bottom: 280 };
const MOST_LOOKS = 40;

/** Length against hours: where a look can find it, where it is critical, and when the looks are. */
export function growthChart(a: growth.GrowthAnswer, units: Units): Scene | null {
  const { curve } = a;
  if (!curve || curve.points.length < 2 || a.gives === 'ratios') return null;
  const last = curve.points.at(-1)!;
  const longest = Math.max(last.c_mm, a.critical?.size.c_mm ?? 0, a.detectable.c_mm);
  const x = scaleLinear()
    .domain([0, Math.max(last.hours, 1)])
    .range([FRAME.left, FRAME.right - 20]);
  const y = scaleLinear()
    .domain([0, inUnits(longest, 'length', units) * 1.1])
    .range([FRAME.bottom, FRAME.top]);
  const up = (mm: number) => y(inUnits(mm, 'length', units));
  const programme = shownProgramme(a);
  const looks = programme ? looksWithin(programme.first.hours, programme.repeat.hours, last.hours) : [];
  const other = otherCurve(a, x, up);
  const marks: Mark[] = [
    ...levelAxis(y, FRAME, `length, ${unitOf('length', units)}`, (v) =>
      number(v, units === 'inch' ? 2 : v % 1 ? 1 : 0),
    ),
    ...baseAxis(x, FRAME, 'hours', (v) => number(v), 8),
    line(FRAME.left, up(a.detectable.c_mm), FRAME.right, up(a.detectable.c_mm), 'ink', 1.2, '7 4'),
    ...(a.critical ? criticalLine(a.critical, up, units) : []),
    ...depthLine(curve, x, up),
    ...polyline(other, 'soft', 1.2, '9 3 2 3'),
    ...polyline(
      curve.points.map((p): Point => [x(p.hours), up(p.c_mm)]),
      'ink',
      2.2,
    ),
    ...looks.flatMap((at) => lookAt(x(at), up(lengthAt(curve.points, at)))),
    ...labelsAt(FRAME.right + 8, namesAt(a, other, up, units), FRAME),
  ];
  if (curve.through)
    marks.push(
      {
        is: 'circle',
        x: r(x(curve.through.hours)),
        y: r(up(curve.through.c_mm)),
        r: 3.5,
        stroke: 'ink',
        fill: 'sheet',
        width: 1.2,
      },
      text(r(x(curve.through.hours) + 8), r(up(curve.through.c_mm) + 15), 'through the thickness', { size: 11 }),
    );
  if (programme && looks.length)
    marks.push(...firstLook(programme, x(looks[0]!), up(longest), (at) => up(lengthAt(curve.points, x.invert(at)))));
  return {
    title: 'How a crack would grow, and when it is looked for',
    description: describe(a, looks, units),
    width: WIDTH,
    height: HEIGHT,
    marks,
    table: tableOf(a, looks, units),
  };
}
type At = (v: number) => number;

/** What is said of the first look, above the curve and clear of it. */
function firstLook(p: ShownProgramme, x: number, below: number, curveAt: At): Mark[] {
  const by = p.first.by ? `, as ${p.first.by} asks` : '';
  const then = `then every ${number(...downward(p.repeat.hours))} h${p.repeat.by ? `, as ${p.repeat.by} asks` : ''}`;
  const said = [`first look ${number(...downward(p.first.hours))} h${by}`, then];
  const wide = Math.max(...said.map((w) => wideOf(w, 12))) + 8;
  const y = below + 22;
  const clear = x + wide < FRAME.right && curveAt(x + wide) > y + 26;
  const at = clear ? x + 6 : x - 6;
  const anchor = clear ? 'start' : 'end';
  return [
    line(x, curveAt(x), x, y - 8, 'dye', 0.9),
    text(r(at), y, said[0]!, { ink: 'dye', bold: true, anchor }),
    text(r(at), y + 16, said[1]!, { ink: 'dye', anchor }),
  ];
}
/** Looks until the growth ends; a long row of them is cut. */
export function looksWithin(first: number, repeat: number, end: number): number[] {
  const looks: number[] = [];
  for (let at = first; at < end && looks.length < MOST_LOOKS; at += repeat) {
    looks.push(at);
    if (repeat <= 0) break;
  }
  return looks;
}
/** Length at an hour, straight between two points of the curve. */
export function lengthAt(points: readonly { readonly hours: number; readonly c_mm: number }[], hours: number): number {
  const after = points.findIndex((p) => p.hours >= hours);
  if (after < 0) return points.at(-1)!.c_mm;
  const [b, a] = [points[after]!, points[after - 1]];
  if (!a || b.hours === a.hours) return b.c_mm;
  return a.c_mm + ((b.c_mm - a.c_mm) * (hours - a.hours)) / (b.hours - a.hours);
}
const lookAt = (x: number, y: number): Mark[] => [
  line(x, FRAME.bottom, x, y, 'dye', 0.9),
  { is: 'circle', x: r(x), y: r(y), r: 3, stroke: 'dye', fill: 'dye', width: 0 },
];
function criticalLine(critical: growth.CriticalSize, up: At, units: Units): Mark[] {
  const y = up(critical.size.c_mm);
  const said = `critical, ${measured(critical.size.c_mm, 'length', units)}: ${ENDS[critical.by]}`;
  return [line(FRAME.left, y, FRAME.right, y, 'ink', 1.2, '7 4'), text(FRAME.left + 6, r(y - 6), said, { bold: true })];
}
/** The depth beside the length while the crack is not through. */
function depthLine(curve: growth.GrowthCurve, x: At, up: At): Mark[] {
  const deep = curve.points.flatMap((p): Point[] => (p.a_mm === null ? [] : [[x(p.hours), up(p.a_mm)]]));
  const middle = deep[Math.floor(deep.length * 0.6)];
  return [
    ...polyline(deep, 'soft', 1.2, '3 3', 'depth'),
    ...(middle ? [text(r(middle[0]), r(middle[1] - 8), 'depth', { ink: 'soft', size: 11, anchor: 'end' })] : []),
  ];
}
/** The life with one cycle acting on the next stands beside, never instead. */
function otherCurve(a: growth.GrowthAnswer, x: At, up: At): Point[] {
  if (a.interaction.as === 'none' || !a.interaction.curve) return [];
  return a.interaction.curve.points.map((p): Point => [x(p.hours), up(p.c_mm)]).filter(([at]) => at <= FRAME.right);
}
function namesAt(a: growth.GrowthAnswer, other: readonly Point[], up: At, units: Units): Label[] {
  const last = other.at(-1);
  return [
    { y: up(a.detectable.c_mm), text: `a look can find ${measured(a.detectable.c_mm, 'length', units)}` },
    ...(last && a.interaction.as !== 'none'
      ? [{ y: last[1], text: `with ${INTERACTIONS[a.interaction.as]}: not counted on`, ink: 'soft' as const }]
      : []),
  ];
}
function describe(a: growth.GrowthAnswer, looks: readonly number[], units: Units): string {
  const end = a.curve!.points.at(-1)!;
  return `From ${measured(a.first.c_mm, 'length', units)} to ${measured(end.c_mm, 'length', units)} in ${number(end.hours)} h by this estimate. ${
    looks.length
      ? `Looks from ${number(looks[0]!)} h on: ${looks.length === MOST_LOOKS ? 'more than ' : ''}${looks.length} before it ends.`
      : 'No look falls before it ends.'
  }`;
}
const ROWS = 14;
function tableOf(a: growth.GrowthAnswer, looks: readonly number[], units: Units): TableBlock {
  const { points } = a.curve!;
  const rows = [
    ...spreadOf(points, ROWS, (p) => p.hours).map((p) => ({ hours: p.hours, c: p.c_mm, a: p.a_mm, look: '' })),
    ...looks.map((at, i) => ({ hours: at, c: lengthAt(points, at), a: null, look: `look ${i + 1}` })),
  ].sort((p, q) => p.hours - q.hours);
  return {
    block: 'table',
    title: 'How a crack would grow, and when it is looked for',
    columns: [
      { key: 'hours', title: 'Hours', unit: 'h', align: 'right' },
      { key: 'length', title: 'Length', unit: unitOf('length', units), align: 'right' },
      { key: 'depth', title: 'Depth', unit: unitOf('length', units), align: 'right' },
      { key: 'look', title: 'Look', align: 'left' },
    ],
    rows: rows.map((p, i) => ({
      id: String(i),
      cells: {
        hours: quantity(p.hours, 'h'),
        length: measuredCell(p.c, 'length', units),
        depth: p.a === null ? words(p.look ? '' : 'through') : measuredCell(p.a, 'length', units),
        look: words(p.look),
      },
    })),
    empty: 'It does not grow.',
  };
}
