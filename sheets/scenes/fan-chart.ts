import { scaleLinear } from 'd3-scale';
import type { growth } from '../../engine/index.ts';
import { number } from '../display.ts';
import { shareOfLives } from '../growth/words.ts';
import { inUnits, measured, measuredCell, quantity, type Units, unitOf, words } from '../measure.ts';
import type { Mark, Scene, TableBlock } from '../model.ts';
import { line, r, text } from './axis.ts';
import { band, baseAxis, type Frame, levelAxis, type Point, polyline, spreadOf } from './plot.ts';

const [WIDTH, HEIGHT] = [960, 320];
const FRAME: Frame = { left: 62, right: 940, top: 46, bottom: 270 };

/** Many lives of one crack, with growth rate, stress and toughness as they scatter: how far apart they run. */
export function fanChart(a: growth.GrowthAnswer, units: Units): Scene | null {
  const chance = a.chance;
  const fan = (chance?.fan ?? []).filter((q) => q.points.length > 1).sort((p, q) => p.share - q.share);
  if (!chance || !fan.length || a.gives === 'ratios') return null;
  const all = fan.flatMap((q) => q.points);
  const x = scaleLinear()
    .domain([0, Math.max(...all.map((p) => p.hours), 1)])
    .range([FRAME.left, FRAME.right - 60]);
  const y = scaleLinear()
    .domain([0, inUnits(Math.max(...all.map((p) => p.c_mm), a.detectable.c_mm), 'length', units) * 1.12])
    .range([FRAME.bottom, FRAME.top]);
  const at = (p: { hours: number; c_mm: number }): Point => [x(p.hours), y(inUnits(p.c_mm, 'length', units))];
  const [fast, slow] = [fan[0]!, fan.at(-1)!];
  const marks: Mark[] = [
    ...(fan.length > 1
      ? band(fast.points.map(at), slow.points.map(at), 'dye-soft', 'between the fastest and the slowest drawn')
      : []),
    ...levelAxis(y, FRAME, `length, ${unitOf('length', units)}`, (v) =>
      number(v, units === 'inch' ? 2 : v % 1 ? 1 : 0),
    ),
    ...baseAxis(x, FRAME, 'hours', (v) => number(v), 8),
  ];
  const detectable = y(inUnits(a.detectable.c_mm, 'length', units));
  marks.push(
    line(FRAME.left, detectable, FRAME.right, detectable, 'ink', 1.2, '7 4'),
    text(FRAME.right, r(detectable - 6), `a look can find ${measured(a.detectable.c_mm, 'length', units)}`, {
      anchor: 'end',
    }),
  );
  for (const q of fan) {
    const middle = Math.abs(q.share - 0.5) < 0.01;
    marks.push(...polyline(q.points.map(at), middle || q === fast ? 'ink' : 'soft', q === fast ? 2 : middle ? 1.4 : 1));
  }
  marks.push(...names(fan, at));
  for (const look of chance.passed) {
    if (look.hours > x.domain()[1]!) continue;
    marks.push(line(x(look.hours), FRAME.bottom, x(look.hours), FRAME.bottom - 12, 'dye', 1.4));
  }
  if (chance.passed[0] && chance.passed[0].hours <= x.domain()[1]!)
    marks.push(
      text(r(x(chance.passed[0].hours) - 5), FRAME.bottom - 4, 'looks', { ink: 'dye', size: 11, anchor: 'end' }),
    );
  return {
    title: `The same crack, ${number(chance.lives)} times over`,
    description: `${fan.map((q) => `${shareOfLives(q.share)} end by ${number(q.points.at(-1)!.hours)} h`).join(', ')}. Drawn with seed ${chance.seed}.`,
    width: WIDTH,
    height: HEIGHT,
    marks,
    table: tableOf(a, fan, units),
  };
}
type Fan = growth.ChanceAnswer['fan'];

/** At the upper end of each line, on two heights in turn so that neighbours do not touch. */
function names(fan: Fan, at: (p: { hours: number; c_mm: number }) => Point): Mark[] {
  let last = Number.NEGATIVE_INFINITY;
  let raised = false;
  return fan.map((q, i) => {
    const [x, y] = at(q.points.at(-1)!);
    raised = x - last < 64 && !raised;
    last = x;
    const said = i === 0 ? `${shareOfLives(q.share)} are so long by here` : shareOfLives(q.share);
    return text(r(x), r(Math.max(12, y - (raised ? 20 : 6))), said, {
      size: 11,
      anchor: i === 0 ? 'end' : 'middle',
      bold: i === 0,
    });
  });
}
const ROWS = 8;
function tableOf(a: growth.GrowthAnswer, fan: Fan, units: Units): TableBlock {
  const rows = fan.flatMap((q) =>
    spreadOf(q.points, ROWS, (p) => p.hours).map((p, k) => ({
      id: `${q.share} ${k}`,
      cells: {
        share: words(shareOfLives(q.share)),
        hours: quantity(p.hours, 'h'),
        length: measuredCell(p.c_mm, 'length', units),
      },
    })),
  );
  return {
    block: 'table',
    title: `The same crack, ${number(a.chance!.lives)} times over`,
    columns: [
      { key: 'share', title: 'Lives that are at least so fast', align: 'left' },
      { key: 'hours', title: 'Hours', unit: 'h', align: 'right' },
      { key: 'length', title: 'Length', unit: unitOf('length', units), align: 'right' },
    ],
    rows,
    empty: 'No life was drawn.',
  };
}
