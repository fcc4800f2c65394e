import { scaleLinear } from 'd3-scale';
import { type Bounds, type Day, dayNumber, type outlook } from '../../engine/index.ts';
import { arrival, arrivalNumber, number, range } from '../display.ts';
import type { Scene } from '../model.ts';
import { line, text, yearAxis } from './axis.ts';

export interface CountedChartInput {
  readonly name: string;
  readonly called: string;
  readonly counted: Bounds;
  readonly unit: string;
  /** Left to the limit on the worse side, in the counted unit. */
  readonly limit: number;
  readonly treatAs: outlook.Arrival | null;
  readonly couldBecome: outlook.Arrival | null;
  readonly gaps: readonly { readonly from: Day; readonly to: Day }[];
  readonly built: Day | null;
  readonly today: Day;
}

/** The counted figure against years. The past is told by its two ends today; a hatch where no paper exists. */
export function countedChart(c: CountedChartInput): Scene {
  const [width, height, left, right, top, bottom] = [660, 240, 60, 640, 34, 210];
  const now = dayNumber(c.today);
  const h = c.unit === 'h' ? ' h' : '';
  const start = c.built ? dayNumber(c.built) : now - 3650;
  const end = Math.max(
    now + 730,
    ...[c.treatAs, c.couldBecome].flatMap((a) => (a ? [arrivalNumber(a, c.today) + 200] : [])),
  );
  const { x, marks } = yearAxis(start, end, left, right, top, bottom);
  const y = scaleLinear()
    .domain([0, Math.max(c.limit, c.counted.high) * 1.08])
    .range([bottom, top]);
  for (const t of y.ticks(4)) marks.push(text(left - 6, y(t) + 4, number(t), { ink: 'soft', size: 11, anchor: 'end' }));
  for (const g of c.gaps)
    marks.push({
      is: 'rect',
      x: x(dayNumber(g.from)),
      y: top,
      w: Math.max(2, x(dayNumber(g.to)) - x(dayNumber(g.from))),
      h: bottom - top,
      stroke: 'none',
      fill: 'hatch',
      width: 0,
      title: 'no paper',
    });
  marks.push(
    line(left, y(c.limit), right, y(c.limit), 'ink', 1.6, '7 4'),
    right - x(now) > 120
      ? text(right, y(c.limit) - 7, `limit ${number(c.limit)}${h}`, { anchor: 'end', bold: true })
      : text(left + 4, y(c.limit) - 7, `limit ${number(c.limit)}${h}`, { bold: true }),
  );
  marks.push(line(x(now), y(c.counted.low), x(now), y(c.counted.high), 'dye', 4));
  const [high, low] = [y(c.counted.high), y(c.counted.low)];
  const highAt = Math.abs(high - y(c.limit)) < 14 ? y(c.limit) + 16 : low - high < 16 ? high - 4 : high + 4;
  marks.push(text(x(now) - 8, highAt, number(c.counted.high), { anchor: 'end', ink: 'dye', bold: true }));
  if (c.treatAs && c.treatAs.is !== 'reached')
    marks.push(line(x(now), y(c.counted.high), x(arrivalNumber(c.treatAs, c.today)), y(c.limit), 'dye', 2));
  if (c.couldBecome && c.counted.low < c.counted.high) {
    marks.push(line(x(now), y(c.counted.low), x(arrivalNumber(c.couldBecome, c.today)), y(c.limit), 'ink', 1.2, '3 3'));
    marks.push(text(x(now) - 8, Math.max(low + 4, highAt + 15), number(c.counted.low), { anchor: 'end', ink: 'soft' }));
  }
  marks.push(
    line(x(now), top, x(now), bottom, 'ink', 1),
    text(x(now), top - 8, 'today', { anchor: 'middle', size: 11 }),
  );
  const title = `${c.called}${c.unit === 'h' ? ', h' : ''}: ${c.name}`;
  const row = (id: string, what: string, figure: string) => ({
    id,
    cells: { what: { is: 'text' as const, text: what }, figure: { is: 'text' as const, text: figure } },
  });
  return {
    title,
    width,
    height,
    marks,
    description: `${range(c.counted)} of ${number(c.limit)}${h} today.`,
    table: {
      block: 'table',
      title,
      columns: [
        { key: 'what', title: 'What', align: 'left' },
        { key: 'figure', title: 'Figure', align: 'right' },
      ],
      rows: [
        row('today', 'Today', `${range(c.counted)}${h}`),
        row('limit', 'Limit', `${number(c.limit)}${h}`),
        ...(c.treatAs ? [row('treat', 'Treat as reached', arrival(c.treatAs, c.today))] : []),
        ...(c.couldBecome ? [row('could', 'Could become', arrival(c.couldBecome, c.today))] : []),
      ],
      empty: 'Nothing is counted.',
    },
  };
}
