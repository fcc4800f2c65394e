import { type Day, Refusal, type record } from '../engine/index.ts';
import type { IntakeContext } from './context.ts';
import { hoursWritten } from './hours.ts';
import { isReading, type Line, openQuestions } from './lines.ts';
import type { Mapping } from './mapping.ts';
import type { Grid } from './model.ts';
import { judged } from './preview.ts';

type Input = record.EntryInput;

/**
 * Entries of the accepted rows, oldest first. A refused row of a log by flights may hide flying: the days round it
 * become a gap, so that nothing looks shorter than it was.
 *
 * @throws Refusal `intake.mapping-open`, `intake.mapping-unfit`, `intake.nothing-to-write`
 */
export function entriesFrom(grid: Grid, mapping: Mapping, context: IntakeContext): Input[] {
  const open = openQuestions(mapping);
  if (open.length > 0)
    throw new Refusal('intake.mapping-open', {
      given: `The mapping leaves open: ${open.join(' ')}`,
      allowed: 'a mapping that answers these questions',
      remedy: 'Choose, look at the preview again, and then take the rows',
    });
  const { lines, run } = judged(grid, mapping, context);
  if (run.length === 0)
    throw new Refusal('intake.nothing-to-write', {
      given: `None of the ${lines.length} rows of "${grid.fileName}" is accepted`,
      allowed: 'a log with at least one row that is accepted',
      remedy: 'Look at the reasons in the preview; often a column is read as something that it is not',
    });
  const out: Input[] = [];
  const orders = new Map<string, number>();
  const hidden = hiddenAbove(lines);
  let prior: Line | undefined;
  for (const l of run) {
    const add = (kind: string, body: Input['body'], note?: string): void => {
      const order = orders.get(l.day!) ?? 0;
      orders.set(l.day!, Math.min(9999, order + 1));
      out.push({
        id: `row-${l.row}-${kind}`,
        subject: context.subject,
        day: l.day!,
        order,
        evidence: context.evidence,
        paper: {
          title: context.title.slice(0, 200),
          row: l.row,
          ...(context.fileSha256 ? { file_sha256: context.fileSha256 } : {}),
          ...(context.seenBy ? { seen_by: context.seenBy, seen_on: context.today } : {}),
        },
        ...(note ? { note: note.slice(0, 2000) } : {}),
        kind: kind.replace(/_\d+$/, ''),
        body,
      } as Input);
    };
    entriesOfLine(l, prior, hidden, mapping, add);
    if (l.total_s !== undefined) prior = l;
  }
  return [...out, ...gapsFor(lines, run, context)];
}

function entriesOfLine(
  l: Line,
  prior: Line | undefined,
  hidden: ReadonlyMap<number, number>,
  mapping: Mapping,
  add: (kind: string, body: Input['body'], note?: string) => void,
): void {
  const words = l.wordings.filter((w) => w.is !== 'note');
  const remark = words.length === 0 ? l.remark : undefined;
  const use = l.use === undefined ? {} : { use: l.use };
  const note = [remark, l.use === undefined && l.useWord ? `Use as written: ${l.useWord}` : undefined]
    .filter(Boolean)
    .join('. ');
  const count = l.flight_landings === undefined ? {} : { landings: l.flight_landings };
  let noted = false;
  if (l.flight_s !== undefined) {
    add('flights', { hours_h: hoursWritten(l.flight_s), ...count, ...use }, note);
    noted = true;
  } else if (l.total_s !== undefined && prior && (l.use !== undefined || l.flight_landings !== undefined)) {
    const whole = hidden.get(prior.row) === hidden.get(l.row);
    if (l.total_s > prior.total_s! && whole)
      add('flights', { from: prior.day!, hours_h: hoursWritten(l.total_s - prior.total_s!), ...count, ...use });
  }
  if (isReading(l))
    add(
      'reading',
      {
        ...(l.total_s === undefined ? {} : { total_h: hoursWritten(l.total_s) }),
        ...(l.shows_s === undefined ? {} : { shows_h: hoursWritten(l.shows_s), meter: mapping.meter! }),
        ...(l.landings_total === undefined ? {} : { landings: l.landings_total }),
      },
      noted ? undefined : note,
    );
  const full = l.remark ?? '';
  words.forEach((w, n) => {
    const long = full.length > 200 ? full : undefined;
    if (w.is === 'event') add(`event_${n}`, { event: w.event, detail: full.slice(0, 2000) });
    else
      add(
        `inspection_${n}`,
        {
          wording: full.slice(0, 200).trim(),
          ...(l.total_s === undefined ? {} : { total_h: hoursWritten(l.total_s) }),
        },
        long,
      );
  });
}

/** How many rows that may hide flying stand at or above each row of the file. */
function hiddenAbove(lines: readonly Line[]): Map<number, number> {
  let n = 0;
  return new Map(
    lines.map((l) => {
      if (l.reason && l.loses) n++;
      return [l.row, n];
    }),
  );
}

/** Gaps for refused rows of a log by flights: its own day where it can be read, else from neighbour to neighbour. */
function gapsFor(lines: readonly Line[], run: readonly Line[], context: IntakeContext): Input[] {
  if (run.every((l) => l.total_s !== undefined) || !run.some((l) => l.flight_s !== undefined)) return [];
  const [first, last] = [run[0]!.day!, run.at(-1)!.day!];
  const turned = lines.indexOf(run[0]!) > lines.indexOf(run.at(-1)!);
  const below: (Day | undefined)[] = [];
  let next: Day | undefined;
  for (let i = lines.length - 1; i >= 0; i--) {
    below[i] = next;
    if (!lines[i]!.reason) next = lines[i]!.day;
  }
  const spans = new Map<string, { from: Day; to: Day; rows: string[]; row: number }>();
  let above: Day | undefined;
  lines.forEach((l, i) => {
    if (!l.reason) above = l.day;
    if (!l.reason || !l.loses) return;
    const [a, b] = turned ? [below[i], above] : [above, below[i]];
    const readable = l.day !== undefined && l.day <= context.today ? l.day : undefined;
    const [from, to] = [readable ?? a ?? first, readable ?? b ?? last].sort() as [Day, Day];
    const same = spans.get(`${from} ${to}`);
    if (same) same.rows.push(`${l.row}: ${l.reason}`);
    else spans.set(`${from} ${to}`, { from, to, rows: [`${l.row}: ${l.reason}`], row: l.row });
  });
  return [...spans.values()].map((s) => ({
    id: `row-${s.row}-gap`,
    subject: context.subject,
    day: s.to,
    order: 9999,
    evidence: context.evidence,
    paper: { title: context.title.slice(0, 200), row: s.row },
    kind: 'gap' as const,
    body: {
      from: s.from,
      to: s.to,
      because: `The log has rows here that could not be taken. Row ${s.rows.join('; row ')}`.slice(0, 2000),
      paper_wanted: context.title.slice(0, 200),
    },
  }));
}
