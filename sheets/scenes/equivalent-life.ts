import { scaleLinear } from 'd3-scale';
import { type Bounds, dayNumber, parseDay } from '../../engine/index.ts';
import { day as dayWords, number, range } from '../display.ts';
import { hoursCell } from '../measure.ts';
import type { Mark, Scene } from '../model.ts';
import { withoutPaper } from '../standing.ts';
import type { LifeShown } from '../usage/input.ts';
import { line, r, text, yearAxis } from './axis.ts';
import { band, type Frame, labelsAt, levelAxis, type Point, polyline, wideOf } from './plot.ts';

const [WIDTH, HEIGHT] = [960, 300];
const FRAME: Frame = { left: 64, right: 780, top: 40, bottom: 264 };

/** Hours as flown and as they count, along the part's own time line: bounds as bands, a hatch where no paper exists. */
export function equivalentLife({ name, life, gaps: all }: LifeShown, reference: string): Scene | null {
  const gaps = all.filter(withoutPaper);
  const points = life.points.filter((p) => whole(p.flown_h) && whole(p.equivalent_h));
  const [first, last] = [points[0], points.at(-1)];
  if (!first || !last || points.length < 2) return null;
  const number_ = (d: string) => dayNumber(parseDay(d));
  const { x, marks } = yearAxis(
    number_(first.day),
    number_(last.day),
    FRAME.left,
    FRAME.right,
    FRAME.top,
    FRAME.bottom,
  );
  const most = Math.max(...points.flatMap((p) => [p.flown_h.high, p.equivalent_h.high]), 1);
  const y = scaleLinear().domain([0, most]).nice().range([FRAME.bottom, FRAME.top]);
  const at = (of: (p: (typeof points)[number]) => number): Point[] => points.map((p) => [x(number_(p.day)), y(of(p))]);
  for (const g of gaps) {
    const [a, b] = [x(dayNumber(g.from)), x(dayNumber(g.to))];
    marks.push({
      is: 'rect',
      x: r(a),
      y: FRAME.top,
      w: r(Math.max(2, b - a)),
      h: FRAME.bottom - FRAME.top,
      stroke: 'none',
      fill: 'hatch',
      width: 0,
      title: 'no paper',
    });
  }
  const [high, low] = [at((p) => p.equivalent_h.high), at((p) => p.equivalent_h.low)];
  const [flownHigh, flownLow] = [at((p) => p.flown_h.high), at((p) => p.flown_h.low)];
  const wide = last.equivalent_h.high - last.equivalent_h.low > 0.5;
  marks.push(
    ...band(high, low, 'dye-soft', 'between the two ends that the papers allow'),
    ...polyline(low, 'soft', 1),
    ...polyline(high, 'ink', 1.8),
    ...polyline(flownHigh, 'ink', 1, '6 3'),
    ...(last.flown_h.high - last.flown_h.low > 0.5 ? polyline(flownLow, 'ink', 1, '6 3') : []),
    ...levelAxis(y, FRAME, 'h', number),
    line(FRAME.left, FRAME.bottom, FRAME.right, FRAME.bottom, 'soft', 0.8),
    ...labelsAt(
      FRAME.right + 8,
      [
        { y: y(last.equivalent_h.high), text: `counts as up to ${number(last.equivalent_h.high)} h`, bold: true },
        ...(wide
          ? [{ y: y(last.equivalent_h.low), text: `at least ${number(last.equivalent_h.low)} h`, ink: 'soft' as const }]
          : []),
        { y: y(last.flown_h.high), text: `flown ${range(last.flown_h)} h` },
      ],
      FRAME,
    ),
    ...gaps.slice(0, 1).map((g): Mark => {
      const [a, b] = [x(dayNumber(g.from)), x(dayNumber(g.to))];
      // Clear of the axis and its unit, also where the hatch begins at the first day.
      const middle = Math.max((a + b) / 2, FRAME.left + 10 + wideOf('no paper') / 2);
      return text(r(Math.min(middle, FRAME.right - wideOf('no paper') / 2)), FRAME.top - 6, 'no paper', {
        ink: 'soft',
        size: 11,
        anchor: 'middle',
      });
    }),
  );
  const title = `Hours of ${reference} that it counts as: ${name}`;
  return {
    title,
    description: `Flown ${range(last.flown_h)} h by ${dayWords(parseDay(last.day))}; that counts as ${range(last.equivalent_h)} h of ${reference}.${gaps.length ? ' Hatched where no paper exists.' : ''}`,
    width: WIDTH,
    height: HEIGHT,
    marks,
    table: {
      block: 'table',
      title,
      columns: [
        { key: 'day', title: 'Day', align: 'left' },
        { key: 'flown', title: 'Flown', unit: 'h', align: 'right' },
        { key: 'counts', title: 'Counts as', unit: 'h', align: 'right' },
      ],
      rows: points.map((p, i) => ({
        id: String(i),
        cells: {
          day: { is: 'day', day: parseDay(p.day), text: dayWords(parseDay(p.day)) },
          flown: hoursCell(p.flown_h),
          counts: hoursCell(p.equivalent_h),
        },
      })),
      empty: 'No hours are known.',
    },
  };
}
const whole = (b: Bounds): boolean => Number.isFinite(b.low) && Number.isFinite(b.high);
