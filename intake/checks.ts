import { type Day, daysBetween, parseHours, type record } from '../engine/index.ts';
import type { IntakeContext } from './context.ts';
import { hoursShown } from './hours.ts';
import { isReading, type Line } from './lines.ts';

const DAY_S = 86_400;
const SLIP_S = 360;

/** Accepted rows in order of time: by day, and within a day as the log runs (newest-first files are turned round). */
export function inTime(lines: readonly Line[]): Line[] {
  const dated = lines.filter((l) => l.day !== undefined && l.reason === undefined);
  let [up, down] = [0, 0];
  for (let i = 1; i < dated.length; i++) {
    if (dated[i]!.day! > dated[i - 1]!.day!) up++;
    else if (dated[i]!.day! < dated[i - 1]!.day!) down++;
  }
  const run = down > up ? [...dated].reverse() : dated;
  return run
    .map((l, i) => [l, i] as const)
    .sort((a, b) => (a[0].day! < b[0].day! ? -1 : a[0].day! > b[0].day! ? 1 : a[1] - b[1]))
    .map(([l]) => l);
}

const keyOf = (day: string, parts: readonly (string | number | undefined)[]) => [day, ...parts].join('|');
function keyOfLine(l: Line): string {
  if (isReading(l)) return keyOf(l.day!, ['reading', l.total_s, l.shows_s, l.landings_total]);
  if (l.flight_s !== undefined) return keyOf(l.day!, ['flights', l.flight_s, l.flight_landings, l.use]);
  return keyOf(l.day!, ['wording', l.remark?.toLowerCase()]);
}
function keyOfEntry(e: record.Entry | record.EntryInput): string | undefined {
  const s = (h: string | number | undefined) => (h === undefined ? undefined : parseHours(h));
  if (e.kind === 'reading') return keyOf(e.day, ['reading', s(e.body.total_h), s(e.body.shows_h), e.body.landings]);
  if (e.kind === 'flights') return keyOf(e.day, ['flights', s(e.body.hours_h), e.body.landings, e.body.use]);
  if (e.kind === 'inspection') return keyOf(e.day, ['wording', e.body.wording.toLowerCase()]);
  if (e.kind === 'event') return keyOf(e.day, ['wording', e.body.detail?.toLowerCase()]);
  return undefined;
}

/** Refuses rows that the log holds already, one row for each entry there. */
export function refuseKnown(lines: readonly Line[], context: IntakeContext): void {
  const known = new Map<string, string[]>();
  for (const e of context.existing ?? []) {
    const key = e.subject === context.subject ? keyOfEntry(e) : undefined;
    if (key !== undefined) known.set(key, [...(known.get(key) ?? []), e.id]);
  }
  if (known.size === 0) return;
  for (const l of lines) {
    if (l.reason !== undefined || l.day === undefined) continue;
    const id = known.get(keyOfLine(l))?.shift();
    if (id !== undefined) l.reason = `already in the log, entry ${id}`;
  }
}

/** Warnings between rows: what a person should look at before the rows are taken. */
export function warnBetween(run: readonly Line[]): void {
  const seen = new Map<string, number>();
  const onDay = new Map<Day, number>();
  const before: Partial<Record<'total_s' | 'shows_s' | 'landings_total', Line>> = {};
  let last: Line | undefined;
  /** Hours and landings of rows since the last one with a total. */
  let since = { s: 0, whole: true };
  for (const l of run) {
    const key = keyOfLine(l);
    const twin = seen.get(key);
    if (twin !== undefined) l.warnings.push(`the same as row ${twin}`);
    else seen.set(key, l.row);
    const days = last ? daysBetween(last.day!, l.day!) : 0;
    if (days > 366) l.warnings.push(`${days} days without a row since ${last!.day}`);
    if (l.flight_s !== undefined) {
      const sum = (onDay.get(l.day!) ?? 0) + l.flight_s;
      onDay.set(l.day!, sum);
      if (sum > DAY_S) l.warnings.push(`the rows of ${l.day} add up to more than 24 h`);
    }
    since = { s: since.s + (l.flight_s ?? 0), whole: since.whole && l.flight_s !== undefined };
    for (const what of ['total_s', 'shows_s', 'landings_total'] as const) {
      const now = l[what];
      if (now === undefined) continue;
      const prior = before[what];
      before[what] = l;
      if (!prior) continue;
      const step = now - prior[what]!;
      const name = what === 'total_s' ? 'total hours' : what === 'shows_s' ? 'the meter' : 'total landings';
      const shown = (n: number) => (what === 'landings_total' ? String(n) : hoursShown(n));
      if (step < 0)
        l.warnings.push(`${name} run backwards: ${shown(now)} after ${shown(prior[what]!)} in row ${prior.row}`);
      if (what !== 'landings_total' && step > DAY_S * (daysBetween(prior.day!, l.day!) + 1))
        l.warnings.push(`${name} grow by ${shown(step)} since row ${prior.row}: more than 24 h a day`);
      if (what === 'total_s' && step >= 0 && since.whole && Math.abs(step - since.s) > SLIP_S)
        l.warnings.push(
          `total hours grow by ${shown(step)} since row ${prior.row}, its flights add up to ${shown(since.s)}`,
        );
      if (
        what === 'landings_total' &&
        prior === last &&
        l.flight_landings !== undefined &&
        step >= 0 &&
        step !== l.flight_landings
      )
        l.warnings.push(`total landings grow by ${step} since row ${prior.row}, the row lists ${l.flight_landings}`);
    }
    if (l.total_s !== undefined) since = { s: 0, whole: true };
    last = l;
  }
}
