import type { Day } from '../engine/index.ts';
import { inTime, refuseKnown, warnBetween } from './checks.ts';
import type { IntakeContext } from './context.ts';
import { hoursShown } from './hours.ts';
import { type Line, linesOf, openQuestions, requireFit } from './lines.ts';
import type { Mapping } from './mapping.ts';
import type { Grid } from './model.ts';

export interface PreviewRow {
  readonly row: number;
  readonly verdict: 'accepted' | 'refused';
  readonly reason?: string;
  readonly warning?: string;
  /** A figure of the row is the stored result of a formula. */
  readonly fromFormula?: true;
  readonly cells: readonly string[];
}
export interface Preview {
  readonly rows: readonly PreviewRow[];
  readonly counts: { readonly accepted: number; readonly refused: number; readonly warned: number };
  readonly byUse: readonly { readonly use: string; readonly hours_s: number; readonly landings: number }[];
  /** Ready for reading, in order. */
  readonly totals: Readonly<Record<string, string>>;
  readonly first?: Day;
  readonly last?: Day;
  /** Questions that a person must answer before the rows can be taken. */
  readonly open: readonly string[];
  readonly notes: readonly string[];
}

/** Rows read, judged and put in order of time. @throws Refusal `intake.mapping-unfit` */
export function judged(
  grid: Grid,
  mapping: Mapping,
  context: IntakeContext,
): { lines: Line[]; run: Line[]; aside: { row: number; why: string }[] } {
  requireFit(grid, mapping);
  const { lines, aside } = linesOf(grid, mapping, context);
  if (context.registration === undefined) refuseMixed(lines, mapping);
  refuseKnown(lines, context);
  const run = inTime(lines);
  warnBetween(run);
  return { lines, run, aside };
}

/** Several aircraft in one file, and no one said which is meant: none is taken. */
function refuseMixed(lines: readonly Line[], mapping: Mapping): void {
  const at = mapping.columns.registration;
  if (at === undefined) return;
  const names = new Set(lines.map((l) => (l.texts[at] ?? '').trim().toUpperCase()).filter((t) => t !== ''));
  if (names.size < 2) return;
  for (const l of lines) l.reason ??= `the file names ${names.size} aircraft: say which one is meant`;
}

/** Every row accepted or refused with its reason, before anything is written. @throws Refusal `intake.mapping-unfit` */
export function preview(grid: Grid, mapping: Mapping, context: IntakeContext): Preview {
  const { lines, run, aside } = judged(grid, mapping, context);
  const rows = lines.map(
    (l): PreviewRow => ({
      row: l.row,
      verdict: l.reason === undefined ? 'accepted' : 'refused',
      ...(l.reason === undefined ? {} : { reason: l.reason }),
      ...(l.warnings.length === 0 ? {} : { warning: l.warnings.join('; ') }),
      ...(l.fromFormula ? { fromFormula: true as const } : {}),
      cells: l.texts,
    }),
  );
  const refused = lines.filter((l) => l.reason !== undefined).length;
  const byUse = usesOf(run);
  const [first, last] = [run[0]?.day, run.at(-1)?.day];
  const totals: Record<string, string> = {};
  if (first && last) Object.assign(totals, { 'First day': first, 'Last day': last });
  const lastTotal = run.findLast((l) => l.total_s !== undefined);
  if (lastTotal) totals['Last total'] = hoursShown(lastTotal.total_s!);
  for (const u of byUse)
    totals[u.use === 'unknown' ? 'Use not stated' : u.use.replaceAll('_', ' ')] =
      `${hoursShown(u.hours_s)}, ${u.landings} landings`;
  return {
    rows,
    counts: { accepted: lines.length - refused, refused, warned: rows.filter((r) => r.warning).length },
    byUse,
    totals,
    ...(first && last ? { first, last } : {}),
    open: openQuestions(mapping),
    notes: [...leftOut(run, lines), ...notesOf(grid, mapping, rows, aside)],
  };
}

function usesOf(run: readonly Line[]): Preview['byUse'] {
  const sums = new Map<string, { hours_s: number; landings: number }>();
  for (const l of run) {
    if (l.flight_s === undefined) continue;
    const sum = sums.get(l.use ?? 'unknown') ?? { hours_s: 0, landings: 0 };
    sum.hours_s += l.flight_s;
    sum.landings += l.flight_landings ?? 0;
    sums.set(l.use ?? 'unknown', sum);
  }
  return [...sums].sort(([a], [b]) => (a < b ? -1 : 1)).map(([use, sum]) => ({ use, ...sum }));
}

/** What rows hold and the log will not: said before anything is written. */
function leftOut(run: readonly Line[], lines: readonly Line[]): string[] {
  const bare = run.filter(
    (l) =>
      l.flight_s === undefined && l.total_s === undefined && (l.flight_landings !== undefined || l.use !== undefined),
  ).length;
  const refused = lines.length - run.length;
  return [
    ...(bare > 0
      ? [
          `${bare} rows name landings or a use but no hours of the flight and no total: only their meter or total landings are taken. Say above which column holds the hours.`,
        ]
      : []),
    ...(refused > 0
      ? [
          'Refused rows are not written. Correct them in the file and drop it again, or write the others now: what a refused flight may hide then stays open, on the worse side.',
        ]
      : []),
  ];
}

function notesOf(
  grid: Grid,
  mapping: Mapping,
  rows: readonly PreviewRow[],
  aside: readonly { row: number; why: string }[],
): string[] {
  const notes = aside.map((a) => `Row ${a.row} is left aside: ${a.why}.`);
  const formulas = rows.filter((r) => r.fromFormula).length;
  if (formulas > 0)
    notes.push(`${formulas} rows hold results of formulas. The stored results are read; nothing is worked out again.`);
  const day = mapping.columns.day;
  if (day !== undefined && grid.rows.some((r) => /^\D*\d{1,2}\D+[\da-z]{1,9}\D+\d{2}$/i.test(r.cells[day]?.text ?? '')))
    notes.push(
      `Years of two digits are read as ${mapping.two_digit_years_from} to ${mapping.two_digit_years_from + 99}.`,
    );
  return notes;
}
