import { scaleLinear } from 'd3-scale';
import type { growth } from '../../engine/index.ts';
import { capital, number } from '../display.ts';
import { quantity, words } from '../measure.ts';
import type { Mark, Scene } from '../model.ts';
import { line, r, text } from './axis.ts';
import { baseAxis, type Frame } from './plot.ts';

const [WIDTH, LEFT, RIGHT, TOP, STEP] = [960, 220, 890, 44, 36];
const MOST = 14;

/** What the hours to critical become when one input changes, widest first. */
export function tornado(a: growth.GrowthAnswer): Scene | null {
  const rows = a.sensitivity.filter((s) => Number.isFinite(s.low_h) && Number.isFinite(s.high_h)).slice(0, MOST);
  if (!rows.length || a.gives === 'ratios') return null;
  const most = Math.max(...rows.map((s) => s.high_h), a.firstToCritical_h ?? 0, 1);
  const x = scaleLinear().domain([0, most]).range([LEFT, RIGHT]);
  const bottom = TOP + rows.length * STEP + 6;
  const frame: Frame = { left: LEFT, right: RIGHT, top: TOP, bottom };
  const marks: Mark[] = [...baseAxis(x, frame, 'hours to critical', (v) => number(v), 8)];
  const base = (s: (typeof rows)[number]) =>
    s.hoursFrom === 'detectable' ? a.detectableToCritical_h : a.firstToCritical_h;
  rows.forEach((s, i) => {
    const y = TOP + i * STEP;
    const [low, high] = [x(s.low_h), x(s.high_h)];
    marks.push(
      text(LEFT - 10, y + 10, capital(s.input), { anchor: 'end', bold: i === 0 }),
      text(LEFT - 10, y + 22, s.changed, { anchor: 'end', ink: 'soft', size: 10 }),
      {
        is: 'rect',
        x: r(low),
        y,
        w: r(Math.max(1, high - low)),
        h: 16,
        stroke: 'ink',
        fill: 'dye-soft',
        width: 0.8,
        title: s.changed,
      },
      text(r(low - 5), y + 12, low - LEFT > 60 ? number(s.low_h) : '', { ink: 'soft', size: 11, anchor: 'end' }),
      text(r(high + 5), y + 12, low - LEFT > 60 ? number(s.high_h) : `${number(s.low_h)} to ${number(s.high_h)}`, {
        ink: 'soft',
        size: 11,
      }),
    );
    const at = base(s);
    if (at !== null) marks.push(line(x(at), y - 3, x(at), y + 19, 'ink', 1.8));
  });
  if (a.firstToCritical_h !== null)
    marks.push(
      text(r(x(a.firstToCritical_h)), TOP - 12, `as given ${number(a.firstToCritical_h)} h`, {
        size: 11,
        anchor: x(a.firstToCritical_h) > RIGHT - 100 ? 'end' : 'middle',
      }),
    );
  const title = 'What matters most';
  return {
    title,
    description: rows
      .map((s) => `${capital(s.input)}, ${s.changed}: ${number(s.low_h)} to ${number(s.high_h)} h.`)
      .join(' '),
    width: WIDTH,
    height: bottom + 40,
    marks: marks.filter((m) => m.is !== 'text' || m.text !== ''),
    table: {
      block: 'table',
      title,
      columns: [
        { key: 'input', title: 'Input', align: 'left' },
        { key: 'changed', title: 'Changed', align: 'left' },
        { key: 'hours', title: 'Hours to critical', unit: 'h', align: 'right' },
        { key: 'from', title: 'From', align: 'left' },
      ],
      rows: rows.map((s, i) => ({
        id: String(i),
        cells: {
          input: words(capital(s.input)),
          changed: words(s.changed),
          hours: quantity({ low: s.low_h, high: s.high_h }, 'h'),
          from: words(s.hoursFrom === 'detectable' ? 'the size that a look can find' : 'the first flaw'),
        },
      })),
      empty: 'Nothing was tried.',
    },
  };
}
