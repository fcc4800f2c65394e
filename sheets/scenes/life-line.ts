import { type Day, dayNumber, type record } from '../../engine/index.ts';
import { day } from '../display.ts';
import type { Mark, Scene } from '../model.ts';
import { partName, withoutPaper } from '../standing.ts';
import { line, text, yearAxis } from './axis.ts';

/** Each life on a time axis: the aircraft it sat in, gaps hatched, readings as ticks. */
export function lifeLine(lives: readonly record.Life[], names: (id: string) => string, today: Day): Scene {
  const [width, left, right, top, step] = [1120, 190, 1100, 12, 40];
  const height = top + lives.length * step + 24;
  const starts = lives.flatMap((l) => [l.stretches[0]?.from.day, l.subject.built].filter((d) => d != null));
  const from = Math.min(dayNumber(today) - 365, ...starts.map(dayNumber));
  const { x, marks } = yearAxis(from, dayNumber(today), left, right, top, height - 20);
  const rows: { part: string; from: Day; to: Day; in: string }[] = [];
  lives.forEach((life, i) => {
    const y = top + i * step + 8;
    const labels: Mark[] = [];
    marks.push(text(0, y + 14, partName(life.subject), { bold: true }));
    for (const stay of stays(life)) {
      const [a, b] = [x(dayNumber(stay.from)), x(dayNumber(stay.to))];
      const where = stay.aircraft === null ? 'not fitted' : names(stay.aircraft);
      marks.push({
        is: 'rect',
        x: a,
        y,
        w: Math.max(1, b - a),
        h: 20,
        stroke: 'ink',
        fill: stay.aircraft ? 'sheet' : 'none',
        width: 1,
        title: where,
      });
      const hidden = life.gaps.filter(withoutPaper).map((g) => [x(dayNumber(g.from)), x(dayNumber(g.to))] as const);
      const wide = where.length * 7 + 8;
      const free = [a, ...hidden.map(([, to]) => to)].find(
        (at) => at >= a && at + wide < b && hidden.every(([from, to]) => at + wide < from || at >= to),
      );
      if (free !== undefined) labels.push(text(free + 5, y + 13, where, { size: 11, ink: 'soft' }));
      rows.push({ part: partName(life.subject), from: stay.from, to: stay.to, in: where });
    }
    for (const g of life.gaps) {
      const whole = withoutPaper(g);
      const [a, b] = [x(dayNumber(g.from)), x(dayNumber(g.to))];
      marks.push({
        is: 'rect',
        x: a,
        y: whole ? y : y + 14,
        w: Math.max(2, b - a),
        h: whole ? 20 : 6,
        stroke: 'ink',
        fill: whole ? 'hatch' : 'line',
        width: 1,
        title: whole ? `no paper: ${g.because}` : g.because,
      });
      rows.push({
        part: partName(life.subject),
        from: g.from,
        to: g.to,
        in: whole ? `no paper: ${g.because}` : g.because,
      });
    }
    marks.push(...labels);
    if (life.subject.kind === 'aircraft')
      for (const q of life.readings)
        marks.push(line(x(dayNumber(q.day)), y + 20, x(dayNumber(q.day)), y + 26, 'soft', 1));
  });
  return {
    title: 'Life line',
    description:
      'What each part lived through: the aircraft it sat in, hatched where no paper exists, readings as ticks.',
    width,
    height,
    marks: marks satisfies Mark[],
    table: {
      block: 'table',
      title: 'Life line',
      columns: ['part', 'from', 'to', 'in'].map((key) => ({
        key,
        title: { part: 'Part', from: 'From', to: 'To', in: 'Where' }[key]!,
        align: 'left' as const,
      })),
      rows: rows.map((q, i) => ({
        id: String(i),
        cells: {
          part: { is: 'text', text: q.part },
          from: { is: 'day', day: q.from, text: day(q.from) },
          to: { is: 'day', day: q.to, text: day(q.to) },
          in: { is: 'text', text: q.in },
        },
      })),
      empty: 'No life is known.',
    },
  };
}

function stays(life: record.Life): { from: Day; to: Day; aircraft: string | null }[] {
  const out: { from: Day; to: Day; aircraft: string | null }[] = [];
  for (const s of life.stretches) {
    const last = out.at(-1);
    if (last && last.aircraft === s.aircraft) last.to = s.to.day;
    else out.push({ from: s.from.day, to: s.to.day, aircraft: s.aircraft });
  }
  return out;
}
