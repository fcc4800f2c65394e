import { scaleLinear } from 'd3-scale';
import type { growth } from '../../engine/index.ts';
import { number } from '../display.ts';
import { ENDS } from '../growth/words.ts';
import { inUnits, measured, measuredCell, type Units, unitOf, words } from '../measure.ts';
import type { Mark, Scene, TableBlock } from '../model.ts';
import { line, r, text } from './axis.ts';
import { baseAxis, type Frame, levelAxis, type Point, polyline, spreadOf } from './plot.ts';

const [WIDTH, HEIGHT] = [660, 300];
const FRAME: Frame = { left: 56, right: 640, top: 40, bottom: 252 };

/** What the place still carries with a crack: by fracture, by yield of what is left; the lower governs. */
export function residualChart(a: growth.GrowthAnswer, units: Units): Scene | null {
  const points = a.residual.filter((p) => Number.isFinite(p.fracture_MPa) && Number.isFinite(p.net_section_MPa));
  if (points.length < 2 || a.gives === 'ratios') return null;
  const governing = (p: growth.ResidualPoint) => Math.min(p.fracture_MPa, p.net_section_MPa);
  const limit = a.critical?.limit_MPa ?? null;
  // Fracture of a short crack lies far above yield, and would press all that matters into the lower edge.
  const most = 1.25 * Math.max(...points.map((p) => p.net_section_MPa), ...points.map(governing), limit ?? 0, 1e-6);
  const longest = Math.max(...points.map((p) => p.c_mm));
  const x = scaleLinear()
    .domain([0, inUnits(longest, 'length', units)])
    .range([FRAME.left, FRAME.right]);
  const y = scaleLinear()
    .domain([0, inUnits(most, 'stress', units)])
    .range([FRAME.bottom, FRAME.top])
    .clamp(true);
  const up = (v: number) => y(inUnits(v, 'stress', units));
  const at = (of: (p: growth.ResidualPoint) => number) =>
    points.map((p): Point => [x(inUnits(p.c_mm, 'length', units)), up(of(p))]);
  const seen = points.filter((p) => p.fracture_MPa <= most);
  const marks: Mark[] = [
    ...levelAxis(y, FRAME, `stress that it still carries, ${unitOf('stress', units)}`, (v) => number(v)),
    ...baseAxis(x, FRAME, `length, ${unitOf('length', units)}`, (v) => number(v, units === 'inch' ? 2 : v % 1 ? 1 : 0)),
    ...polyline(
      seen.map((p): Point => [x(inUnits(p.c_mm, 'length', units)), up(p.fracture_MPa)]),
      'soft',
      1.2,
      '6 3',
    ),
    ...polyline(
      at((p) => p.net_section_MPa),
      'soft',
      1.2,
      '2 3',
    ),
    ...polyline(at(governing), 'ink', 2.2),
    ...named(points, seen, x, up, units),
  ];
  if (limit !== null)
    marks.push(
      line(FRAME.left, up(limit), FRAME.right, up(limit), 'ink', 1.2, '7 4'),
      text(FRAME.left + 6, r(up(limit) + 14), `limit load ${measured(limit, 'stress', units)}`, { bold: true }),
    );
  if (a.critical) {
    const c = x(inUnits(Math.min(a.critical.size.c_mm, longest), 'length', units));
    marks.push(
      line(c, up(a.critical.limit_MPa), c, FRAME.bottom, 'ink', 1.2),
      { is: 'circle', x: r(c), y: r(up(a.critical.limit_MPa)), r: 4, stroke: 'ink', fill: 'sheet', width: 1.5 },
      text(r(c - 6), FRAME.bottom - 8, `critical ${measured(a.critical.size.c_mm, 'length', units)}`, {
        anchor: 'end',
        size: 11,
      }),
    );
  }
  const title = 'What it still carries';
  return {
    title,
    description: a.critical
      ? `At limit load, ${measured(a.critical.limit_MPa, 'stress', units)}, a crack of ${measured(a.critical.size.c_mm, 'length', units)} is critical: ${ENDS[a.critical.by]}.`
      : 'No limit stress is given: nothing is called critical.',
    width: WIDTH,
    height: HEIGHT,
    marks,
    table: tableOf(points, title, units),
  };
}
function named(
  points: readonly growth.ResidualPoint[],
  seen: readonly growth.ResidualPoint[],
  x: (v: number) => number,
  up: (v: number) => number,
  units: Units,
): Mark[] {
  const marks: Mark[] = [];
  const early = points[Math.floor(points.length / 4)]!;
  marks.push(
    text(r(x(inUnits(early.c_mm, 'length', units))), r(up(early.net_section_MPa) - 9), 'what is left yields', {
      ink: 'soft',
      size: 11,
    }),
  );
  const f = seen[Math.floor(seen.length / 3)];
  if (f && seen.length > 2)
    marks.push(
      text(r(x(inUnits(f.c_mm, 'length', units)) + 6), r(up(f.fracture_MPa) - 8), 'it breaks', {
        ink: 'soft',
        size: 11,
      }),
    );
  return marks;
}
const ROWS = 12;
function tableOf(points: readonly growth.ResidualPoint[], title: string, units: Units): TableBlock {
  return {
    block: 'table',
    title,
    columns: [
      { key: 'length', title: 'Length', unit: unitOf('length', units), align: 'right' },
      { key: 'fracture', title: 'Breaks at', unit: unitOf('stress', units), align: 'right' },
      { key: 'net', title: 'Yields at', unit: unitOf('stress', units), align: 'right' },
      { key: 'governs', title: 'Governs', align: 'left' },
    ],
    rows: spreadOf(points, ROWS, (p) => p.c_mm).map((p, k) => ({
      id: String(k),
      cells: {
        length: measuredCell(p.c_mm, 'length', units),
        fracture: measuredCell(p.fracture_MPa, 'stress', units),
        net: measuredCell(p.net_section_MPa, 'stress', units),
        governs: words(p.governs),
      },
    })),
    empty: 'No strength was computed.',
  };
}
