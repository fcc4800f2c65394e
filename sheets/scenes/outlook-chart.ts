import { type Day, dayNumber, type outlook } from '../../engine/index.ts';
import { arrival, arrivalNumber, years } from '../display.ts';
import type { Mark, Scene } from '../model.ts';
import { line, text, yearAxis } from './axis.ts';

export interface OutlookRow {
  readonly name: string;
  readonly small: string;
  readonly act: boolean;
  readonly outlook: outlook.Outlook;
}

/** The years as a picture: a band for flying, two marks for what papers would settle. */
export function outlookChart(rows: readonly OutlookRow[], today: Day, title = 'Years in which it falls due'): Scene {
  const [width, left, right, top, step] = [670, 150, 650, 24, 52];
  const height = top + rows.length * step + 26;
  const start = dayNumber(today);
  const last = Math.max(start + 10 * 365.25, ...rows.map((q) => arrivalNumber(q.outlook.couldBecome.p90, today) + 250));
  const { x, marks } = yearAxis(start - 150, last, left, right, top, height - 22);
  const at = (a: outlook.Arrival) => x(arrivalNumber(a, today));
  rows.forEach((q, i) => {
    const y = top + i * step + 32;
    const o = q.outlook;
    const [worst, best] = [at(o.treatAs.p50), at(o.couldBecome.p50)];
    const ink = q.act ? 'dye' : 'ink';
    const words = o.treatAs.p50.is === 'reached' ? 'treat as due now' : `treat as ${arrival(o.treatAs.p50, today)}`;
    const [from, to] = [at(o.treatAs.p10), at(o.treatAs.p90)];
    marks.push(text(0, y, q.name, { bold: true }), text(0, y + 15, q.small, { ink: 'soft', size: 11 }));
    if (to - from > 1)
      marks.push({
        is: 'rect',
        x: from,
        y: y - 7,
        w: to - from,
        h: 14,
        stroke: 'ink',
        fill: 'dye-soft',
        width: 0.8,
        title: 'flying',
      });
    if (best - worst > 6)
      marks.push(
        line(worst, y, best, y, 'ink', 1, '3 4'),
        line(best, y - 9, best, y + 9, 'ink', 1),
        text(best, y + 21, `papers: could become ${arrival(o.couldBecome.p50, today)}`, {
          ink: 'soft',
          size: 11,
          anchor: best > (left + right) / 2 ? 'end' : 'start',
        }),
      );
    marks.push(
      line(worst, y - 11, worst, y + 11, ink, q.act ? 4 : 2.5),
      text(worst > (left + right) / 2 ? worst + 4 : worst + 6, y - 13, words, {
        ink,
        anchor: worst > (left + right) / 2 ? 'end' : 'start',
        bold: q.act,
      }),
    );
  });
  const now = x(start);
  marks.push(
    line(now, top - 6, now, height - 18, 'ink', 1.2),
    text(now, top - 10, 'today', { size: 11, anchor: 'middle' }),
  );
  return {
    title,
    description: rows
      .map(
        (q) =>
          `${q.name}: treat as ${arrival(q.outlook.treatAs.p50, today)}, could become ${arrival(q.outlook.couldBecome.p50, today)}.`,
      )
      .join(' '),
    width,
    height,
    marks: marks satisfies Mark[],
    table: {
      block: 'table',
      title,
      columns: [
        { key: 'part', title: 'Part', align: 'left' },
        { key: 'treat', title: 'Treat as', align: 'left' },
        { key: 'flying', title: 'Flying, eight times out of ten', align: 'left' },
        { key: 'papers', title: 'Papers could make it', align: 'left' },
      ],
      rows: rows.map((q, i) => ({
        id: String(i),
        cells: {
          part: { is: 'text', text: q.name, small: q.small },
          treat: { is: 'text', text: arrival(q.outlook.treatAs.p50, today) },
          flying: { is: 'text', text: years(q.outlook.treatAs.p10, q.outlook.treatAs.p90) },
          papers: { is: 'text', text: arrival(q.outlook.couldBecome.p50, today) },
        },
      })),
      empty: 'Nothing falls due.',
    },
  };
}
