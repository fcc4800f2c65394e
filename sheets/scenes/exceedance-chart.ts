import { scaleLinear, scaleLog } from 'd3-scale';
import type { usage } from '../../engine/index.ts';
import { capital, count, number } from '../display.ts';
import { quantity, smallCell, words } from '../measure.ts';
import type { Mark, Scene, TableBlock } from '../model.ts';
import { LOAD_WORDS } from '../usage/words.ts';
import { line, r, text } from './axis.ts';
import {
  type Axis,
  baseAxis,
  dashOf,
  decades,
  type Frame,
  type Point,
  pickedOf,
  polyline,
  powerOfTen,
  wideOf,
} from './plot.ts';

type Curve = usage.UsageAnswer['curves'][number];
export interface ExceedanceInput {
  readonly curves: readonly Curve[];
  readonly ground: boolean;
  readonly titleOf: (use: string) => string;
}
const WIDTH = 1000;
const HEIGHT = 300;
const LEAST = 1e-12;
const FEWEST_DECADES = 9;

/** How often each load factor is passed, one panel for each load, one line for each use; null where there is none. */
export function exceedanceChart({ curves, ground, titleOf }: ExceedanceInput): Scene | null {
  const shown = curves
    .filter((c) => c.ground === ground)
    .map((c) => ({ ...c, points: c.points.filter((p) => p.perHour > LEAST && Number.isFinite(p.load_factor)) }))
    .filter((c) => c.points.length > 1)
    .map((c, _, all) => ({ ...c, title: nameOf(c, all, titleOf) }));
  const loads = [...new Set(shown.map((c) => c.load))];
  if (!loads.length) return null;
  const uses = [...new Set(shown.map((c) => c.use))];
  const wide = (WIDTH - 30 * (loads.length - 1)) / loads.length;
  const most = Math.max(...shown.flatMap((c) => c.points.map((p) => p.perHour)));
  const least = Math.min(...shown.flatMap((c) => c.points.map((p) => p.perHour)));
  const powers = decades(Math.max(least, most * Number(`1e-${FEWEST_DECADES}`)), most);
  const drawn = shown.map((c) => ({ ...c, points: c.points.filter((p) => p.perHour >= tenTo(powers[0]!)) }));
  const marks = loads.flatMap((load, i) => {
    const left = i * (wide + 30);
    const frame = {
      left: left + 12 + Math.max(...powers.map((p) => wideOf(powerOfTen(p)))),
      right: left + wide - 4,
      top: 52,
      bottom: HEIGHT - 40,
    };
    const own = drawn.filter((c) => c.load === load && c.points.length > 1);
    return [
      text(left, 16, capital(LOAD_WORDS[load]), { bold: true }),
      ...panel(own, frame, powers, (use) => dashOf(uses.indexOf(use))),
    ];
  });
  const title = ground ? 'How often it is jolted on the ground' : 'How often it is loaded in flight';
  return {
    title,
    description: describe(shown),
    width: WIDTH,
    height: HEIGHT,
    marks,
    table: tableOf(shown, title),
  };
}

type Named = Curve & { readonly title: string };
/** By its use; where one use meets the same load from two tables, each with its number. */
function nameOf(c: Curve, all: readonly Curve[], titleOf: (use: string) => string): string {
  const alike = all.filter((o) => o.use === c.use && o.load === c.load);
  return alike.length > 1 ? `${titleOf(c.use)} ${alike.indexOf(c) + 1}` : titleOf(c.use);
}

function panel(
  curves: readonly Named[],
  frame: Frame,
  powers: readonly number[],
  dashed: (use: string) => string | undefined,
): Mark[] {
  const factors = curves.flatMap((c) => c.points.map((p) => p.load_factor));
  const [low, high] = [Math.min(...factors, 1), Math.max(...factors, 1)];
  const longest = Math.max(...curves.map((c) => wideOf(c.title)));
  const x: Axis = scaleLinear()
    .domain([low, high > low ? high : low + 1])
    .range([frame.left, Math.max(frame.left + 120, frame.right - longest - 8)]);
  const y = scaleLog()
    .domain([tenTo(powers[0]!), tenTo(powers.at(-1)!)])
    .range([frame.bottom, frame.top])
    .clamp(true);
  const marks: Mark[] = [
    text(frame.left - 6 - Math.max(...powers.map((p) => wideOf(powerOfTen(p)))), frame.top - 12, 'times an hour', {
      ink: 'soft',
      size: 11,
    }),
  ];
  for (const p of powers)
    marks.push(
      line(frame.left, y(tenTo(p)), x.range()[1]!, y(tenTo(p)), 'hair'),
      text(frame.left - 6, r(y(tenTo(p)) + 4), powerOfTen(p), { ink: 'soft', size: 11, anchor: 'end' }),
    );
  marks.push(...baseAxis(x, frame, 'load factor, g', (v) => number(v, Number.isInteger(v) ? 0 : 1)));
  marks.push(line(x(1), frame.top, x(1), frame.bottom, 'line', 1, '2 3'));
  const lines = curves.map((c) => {
    const at = (p: Curve['points'][number]): Point => [x(p.load_factor), y(p.perHour)];
    const sorted = [...c.points].sort((p, q) => p.load_factor - q.load_factor);
    return {
      title: c.title,
      dash: dashed(c.use),
      down: sorted.filter((p) => p.load_factor < 1).map(at),
      up: sorted.filter((p) => p.load_factor >= 1).map(at),
    };
  });
  for (const l of lines)
    marks.push(...polyline(l.down, 'ink', 1.4, l.dash, l.title), ...polyline(l.up, 'ink', 1.4, l.dash, l.title));
  return [...marks, ...namesAtEnds(lines, frame)];
}
const tenTo = (p: number): number => Number(`1e${p}`);

interface Line {
  readonly title: string;
  readonly down: readonly Point[];
  readonly up: readonly Point[];
}
interface Box {
  readonly x: number;
  readonly y: number;
  readonly w: number;
}
const HIGH = 12;
const covers = (b: Box, [x, y]: Point): boolean => x > b.x - 2 && x < b.x + b.w && Math.abs(y - b.y) < HIGH / 2 + 1;
const meets = (a: Box, b: Box): boolean => Math.abs(a.y - b.y) < HIGH && a.x < b.x + b.w && b.x < a.x + a.w;

/** A name beside the end of each line, from the lowest up, where it covers least of the names and lines that are there. */
function namesAtEnds(lines: readonly Line[], frame: Frame): Mark[] {
  const all = lines.flatMap((l) => [...between(l.down), ...between(l.up)]);
  const taken: Box[] = [];
  const ends = lines.flatMap(({ title, up, down }) => {
    const end = up.at(-1) ?? down.at(-1);
    return end ? [{ title, end }] : [];
  });
  ends.sort((a, b) => b.end[1] - a.end[1]);
  return ends.map(({ title, end: [x, y] }) => {
    const w = wideOf(title);
    // Far from its line, or on the other side of another, a name says the wrong thing.
    const places = [0, -13, 13, -26, 26].flatMap((dy) => {
      const at = Math.min(y + dy, frame.bottom - 9);
      const far = Math.abs(dy) / 3;
      return [
        { x: x + 5, y: at, w, far },
        { x: x - 7 - w, y: at, w, far: far + 1 },
      ];
    });
    const cost = (b: (typeof places)[number]) =>
      b.far + 50 * taken.filter((t) => meets(t, b)).length + 2 * all.filter((p) => covers(b, p)).length;
    const best = places.reduce((a, b) => (cost(b) < cost(a) ? b : a));
    taken.push(best);
    return text(r(best.x), r(best.y + 4), title, { size: 11 });
  });
}
/** Points close together along a line. */
function between(points: readonly Point[]): Point[] {
  return points.slice(1).flatMap((b, i) => {
    const a = points[i]!;
    const n = Math.max(1, Math.ceil(Math.hypot(b[0] - a[0], b[1] - a[1]) / 4));
    return Array.from(
      { length: n },
      (_, k): Point => [a[0] + ((b[0] - a[0]) * (k + 1)) / n, a[1] + ((b[1] - a[1]) * (k + 1)) / n],
    );
  });
}

function describe(curves: readonly Named[]): string {
  const loads = [...new Set(curves.map((c) => c.load))];
  return loads
    .map((load) => {
      const own = curves.filter((c) => c.load === load);
      const said = own.map((c) => {
        const top = Math.max(...c.points.map((p) => p.load_factor));
        return `${c.title} up to ${number(top, 1)} g`;
      });
      return `${capital(LOAD_WORDS[load])}, ${count(new Set(own.map((c) => c.use)).size, 'use')}: ${said.join(', ')}.`;
    })
    .join(' ');
}
const ROWS = 9;
function tableOf(curves: readonly Named[], title: string): TableBlock {
  const rows = curves.flatMap((c, i) => {
    const sorted = [...c.points].sort((a, b) => a.load_factor - b.load_factor);
    return pickedOf(sorted, ROWS).map((p, k) => ({
      id: `${i}-${k}`,
      cells: {
        use: words(c.title),
        load: words(LOAD_WORDS[c.load]),
        factor: quantity(p.load_factor, '', 2),
        times: smallCell(1000 * p.perHour),
      },
    }));
  });
  return {
    block: 'table',
    title,
    columns: [
      { key: 'use', title: 'Use', align: 'left' },
      { key: 'load', title: 'Load', align: 'left' },
      { key: 'factor', title: 'Load factor, g', align: 'right' },
      { key: 'times', title: 'Times', unit: 'in 1\u202f000 hours', align: 'right' },
    ],
    rows,
    empty: 'No loads are named.',
  };
}
