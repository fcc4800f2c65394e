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
    .filter((c) => c.points.length > 1);
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
    const frame = { left: left + 52, right: left + wide - 4, top: 52, bottom: HEIGHT - 40 };
    const own = drawn.filter((c) => c.load === load && c.points.length > 1);
    return [
      text(left, 16, capital(LOAD_WORDS[load]), { bold: true }),
      ...panel(own, frame, powers, (use) => ({ title: titleOf(use), dash: dashOf(uses.indexOf(use)) })),
    ];
  });
  const title = ground ? 'How often it is jolted on the ground' : 'How often it is loaded in flight';
  return {
    title,
    description: describe(shown, titleOf),
    width: WIDTH,
    height: HEIGHT,
    marks,
    table: tableOf(shown, title, titleOf),
  };
}

type Drawn = (use: string) => { title: string; dash: string | undefined };
function panel(curves: readonly Curve[], frame: Frame, powers: readonly number[], drawn: Drawn): Mark[] {
  const factors = curves.flatMap((c) => c.points.map((p) => p.load_factor));
  const [low, high] = [Math.min(...factors, 1), Math.max(...factors, 1)];
  const longest = Math.max(...curves.map((c) => wideOf(drawn(c.use).title)));
  const x: Axis = scaleLinear()
    .domain([low, high > low ? high : low + 1])
    .range([frame.left, Math.max(frame.left + 120, frame.right - longest - 8)]);
  const y = scaleLog()
    .domain([tenTo(powers[0]!), tenTo(powers.at(-1)!)])
    .range([frame.bottom, frame.top])
    .clamp(true);
  const marks: Mark[] = [text(frame.left - 44, frame.top - 12, 'times an hour', { ink: 'soft', size: 11 })];
  for (const p of powers)
    marks.push(
      line(frame.left, y(tenTo(p)), x.range()[1]!, y(tenTo(p)), 'hair'),
      text(frame.left - 6, r(y(tenTo(p)) + 4), powerOfTen(p), { ink: 'soft', size: 11, anchor: 'end' }),
    );
  marks.push(...baseAxis(x, frame, 'load factor, g', (v) => number(v, Number.isInteger(v) ? 0 : 1)));
  marks.push(line(x(1), frame.top, x(1), frame.bottom, 'line', 1, '2 3'));
  const labels: { x: number; y: number; w: number }[] = [];
  for (const c of curves) {
    const { title, dash } = drawn(c.use);
    const at = (p: Curve['points'][number]): Point => [x(p.load_factor), y(p.perHour)];
    const sorted = [...c.points].sort((a, b) => a.load_factor - b.load_factor);
    const branches = [sorted.filter((p) => p.load_factor < 1), sorted.filter((p) => p.load_factor >= 1)];
    for (const branch of branches) marks.push(...polyline(branch.map(at), 'ink', 1.4, dash, title));
    const end = branches[1]!.at(-1) ?? branches[0]!.at(-1);
    if (end) marks.push(nameAt(at(end), title, frame.bottom - 5, labels));
  }
  return marks;
}
const tenTo = (p: number): number => Number(`1e${p}`);
/** A name beside the end of its line, moved until it covers no other. */
function nameAt([x, y]: Point, title: string, lowest: number, taken: { x: number; y: number; w: number }[]): Mark {
  const w = wideOf(title);
  const hides = (at: number) => taken.some((l) => Math.abs(l.y - at) < 13 && l.x < x + w && x < l.x + l.w);
  const from = Math.min(y, lowest);
  let at = from;
  // Below the end of a line nothing is drawn; above it the others run.
  while (hides(at) && at + 13 <= lowest) at += 13;
  if (hides(at)) at = from;
  while (hides(at)) at -= 13;
  taken.push({ x, y: at, w });
  return text(r(x + 5), r(at + 3), title, { size: 11 });
}

function describe(curves: readonly Curve[], titleOf: (use: string) => string): string {
  const loads = [...new Set(curves.map((c) => c.load))];
  return loads
    .map((load) => {
      const own = curves.filter((c) => c.load === load);
      const said = own.map((c) => {
        const top = Math.max(...c.points.map((p) => p.load_factor));
        return `${titleOf(c.use)} up to ${number(top, 1)} g`;
      });
      return `${capital(LOAD_WORDS[load])}, ${count(own.length, 'use')}: ${said.join(', ')}.`;
    })
    .join(' ');
}
const ROWS = 9;
function tableOf(curves: readonly Curve[], title: string, titleOf: (use: string) => string): TableBlock {
  const rows = curves.flatMap((c, i) => {
    const sorted = [...c.points].sort((a, b) => a.load_factor - b.load_factor);
    return pickedOf(sorted, ROWS).map((p, k) => ({
      id: `${i}-${k}`,
      cells: {
        use: words(titleOf(c.use)),
        load: words(LOAD_WORDS[c.load]),
        factor: quantity(p.load_factor, '', 2),
        times: smallCell(p.perHour),
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
      { key: 'times', title: 'Times an hour', align: 'right' },
    ],
    rows,
    empty: 'No loads are named.',
  };
}
