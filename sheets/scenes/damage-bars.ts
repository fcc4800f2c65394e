import { scaleLinear } from 'd3-scale';
import type { usage } from '../../engine/index.ts';
import { number } from '../display.ts';
import { percentCell, timesCell, timesFigure, timesRange, words } from '../measure.ts';
import type { Ink, Mark, Scene, TableBlock } from '../model.ts';
import { LOAD_WORDS, LOADS } from '../usage/words.ts';
import { line, r, text } from './axis.ts';
import { wideOf } from './plot.ts';

const FILLS: Readonly<Record<usage.LoadSource, Ink>> = {
  gust: 'sheet',
  manoeuvre: 'hair',
  taxi: 'paper',
  landing: 'dye-soft',
  ground_air_ground: 'line',
};
const [WIDTH, LEFT, RIGHT, TOP, STEP] = [1000, 150, 800, 36, 46];

/** What an hour of each use does to the place, against an hour of the reference use, and which load does it. */
export function damageBars(answer: usage.UsageAnswer): Scene {
  const most = Math.max(...answer.uses.flatMap((u) => [u.ratio, u.ratioAcross.high]).filter(Number.isFinite), 1e-9);
  const x = scaleLinear().domain([0, most]).range([LEFT, RIGHT]);
  const bottom = TOP + answer.uses.length * STEP;
  const marks: Mark[] = [];
  const reference = answer.uses.find((u) => u.use === answer.reference)?.title ?? answer.reference;
  if (most >= 1)
    marks.push(
      line(x(1), TOP - 10, x(1), bottom, 'soft', 1, '7 4'),
      text(r(x(1)), TOP - 16, `an hour of ${reference.toLowerCase()}`, {
        ink: 'soft',
        size: 11,
        anchor: x(1) > RIGHT - 150 ? 'end' : 'middle',
      }),
    );
  let unnamed = false;
  answer.uses.forEach((u, i) => {
    const y = TOP + i * STEP + 6;
    marks.push(text(LEFT - 10, y + 14, u.title, { anchor: 'end', bold: u.use === answer.hardest }));
    let from = 0;
    for (const load of LOADS) {
      const share = u.shares.find((s) => s.load === load)?.share ?? 0;
      if (share <= 0) continue;
      const [a, b] = [x(from * u.ratio), x((from + share) * u.ratio)];
      const title = `${LOAD_WORDS[load]}: ${percent(share)}`;
      marks.push({ is: 'rect', x: r(a), y, w: r(b - a), h: 20, stroke: 'ink', fill: FILLS[load], width: 0.8, title });
      const fits = wideOf(LOAD_WORDS[load], 10) + 8 < b - a;
      if (fits) marks.push(text(r(a + 5), y + 13.5, LOAD_WORDS[load], { size: 10 }));
      else if (b - a > 4) unnamed = true;
      from += share;
    }
    const across = u.ratioAcross;
    if (across.high > across.low)
      marks.push(
        line(x(across.low), y + 27, x(across.high), y + 27, 'soft', 1.2),
        line(x(across.low), y + 24, x(across.low), y + 30, 'soft', 1.2),
        line(x(across.high), y + 24, x(across.high), y + 30, 'soft', 1.2),
        text(r(x(across.high) + 6), y + 31, `${timesRange(across)} over all that was tried`, { ink: 'soft', size: 10 }),
      );
    marks.push(text(r(x(u.ratio) + 8), y + 14, `${timesFigure(u.ratio)} times`, { bold: u.use === answer.hardest }));
  });
  const key = unnamed ? keyAt(bottom + 22, answer) : [];
  const title = 'What an hour of each use does to this place';
  return {
    title,
    description: describe(answer),
    width: WIDTH,
    height: bottom + (unnamed ? 36 : 10),
    marks: [...marks, ...key],
    table: tableOf(answer, title),
  };
}
const percent = (share: number): string => `${number(100 * share, share < 0.1 && share > 0 ? 1 : 0)} %`;

const shareCell = (share: number) => percentCell(share, percent(share));

/** Named below, where a stretch is too short for its name. */
function keyAt(y: number, answer: usage.UsageAnswer): Mark[] {
  const marks: Mark[] = [];
  let x = LEFT;
  for (const load of LOADS) {
    if (!answer.uses.some((u) => u.shares.some((s) => s.load === load && s.share > 0))) continue;
    marks.push(
      { is: 'rect', x, y: y - 9, w: 14, h: 10, stroke: 'ink', fill: FILLS[load], width: 0.8 },
      text(x + 19, y, LOAD_WORDS[load], { ink: 'soft', size: 11 }),
    );
    x += wideOf(LOAD_WORDS[load]) + 44;
  }
  return marks;
}
function describe(answer: usage.UsageAnswer): string {
  return answer.uses
    .map((u) => {
      const first = [...u.shares].sort((a, b) => b.share - a.share)[0];
      const most =
        first && first.share > 0 ? `, most of it by ${LOAD_WORDS[first.load]} (${percent(first.share)})` : '';
      return `${u.title}: ${timesFigure(u.ratio)} times${most}.`;
    })
    .join(' ');
}
function tableOf(answer: usage.UsageAnswer, title: string): TableBlock {
  const loads = LOADS.filter((l) => answer.uses.some((u) => u.shares.some((s) => s.load === l)));
  return {
    block: 'table',
    title,
    columns: [
      { key: 'use', title: 'Use', align: 'left' },
      { key: 'times', title: 'Counts, times', align: 'right' },
      { key: 'across', title: 'Over all that was tried', align: 'right' },
      ...loads.map((l) => ({ key: l, title: `By ${LOAD_WORDS[l]}`, align: 'right' as const })),
    ],
    rows: answer.uses.map((u) => ({
      id: u.use,
      cells: {
        use: words(u.title),
        times: timesCell(u.ratio),
        across: timesCell(u.ratioAcross),
        ...Object.fromEntries(
          loads.map((l) => [l, shareCell(u.shares.find((s) => s.load === l)?.share ?? 0)] as const),
        ),
      },
    })),
    empty: 'No use is named.',
  };
}
