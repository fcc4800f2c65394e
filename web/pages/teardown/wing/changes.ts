import type { JobSteps } from '../../../api/teardown.ts';
import { recordWords } from './record.ts';

export interface PlanChange {
  /** Titles of the steps that came on the plan, and of those that are no longer on it. */
  readonly added: readonly string[];
  readonly gone: readonly string[];
}
/** How the plan differs from the one that was shown before; null where it holds the same steps. */
export function changeOf(before: JobSteps, now: JobSteps): PlanChange | null {
  const ids = (s: JobSteps) => new Set(s.steps.map((x) => x.operation));
  const [old, fresh] = [ids(before), ids(now)];
  const titles = (s: JobSteps, not: ReadonlySet<string | null>) =>
    s.steps.filter((x) => x.operation !== null && !not.has(x.operation)).map((x) => x.title);
  const change = { added: titles(now, old), gone: titles(before, fresh) };
  return change.added.length || change.gone.length ? change : null;
}
/** Findings that were recorded after an entry from this page, each in a line. */
export function ownFindings(now: JobSteps, after: number, mine: ReadonlySet<number>): string[] {
  return now.work
    .filter((w) => w.entry > after && mine.has(w.entry) && w.record.what === 'found' && w.record.finding === 'finding')
    .map((w) => `Entry ${w.entry}: ${recordWords(w.record, now.steps)}`);
}
/** What others recorded after an entry, each in a line. */
export function byOthers(now: JobSteps, after: number, mine: ReadonlySet<number>): string[] {
  return now.work
    .filter((w) => w.entry > after && !mine.has(w.entry))
    .map((w) => `${w.by}, entry ${w.entry}: ${recordWords(w.record, now.steps)}`);
}
