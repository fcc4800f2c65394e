import { addDays, type Day } from '../foundation/day.ts';
import { isConstant } from '../foundation/region/index.ts';
import type { Finding, Gap } from './model.ts';
import { END_OF_DAY, notAfter } from './moments.ts';
import type { Segment } from './segments.ts';
import { isLate, type Timeline } from './timeline.ts';

type What = Gap['what'][number];

/** Gaps of one carrier within some of its segments: declared ones, and those that no one declared. */
export function gapsOf(t: Timeline, segments: readonly Segment[], name: string): { gaps: Gap[]; findings: Finding[] } {
  const gaps: Gap[] = [];
  const findings: Finding[] = [];
  for (const run of runsOf(segments, (s) => reasonOf(t, s))) {
    const [first, last] = [run.segments[0]!, run.segments.at(-1)!];
    const from = first.from.order === END_OF_DAY ? addDays(first.from.day, 1) : first.from.day;
    const to = last.to.day;
    const variables = [...new Set(run.segments.flatMap((s) => [...s.variables]))].sort((a, b) => a - b);
    const what = whatOf(run.segments, variables.length > 0);
    const entries = [...new Set(run.segments.flatMap((s) => edgeEntries(s)))].slice(0, 4);
    const declared = first.gap !== null && first.gap !== 'bare' ? first.gap.entry : null;
    gaps.push({
      id: declared?.id ?? `${t.aircraft}:${run.reason}:${from}`,
      from,
      to,
      because: declared?.body.because ?? BECAUSE[run.reason as keyof typeof BECAUSE],
      papers: declared
        ? [declared.body.paper_wanted ?? `Logbook ${name}, ${from} to ${to}`]
        : papersFor(run.reason, name, from, to),
      what,
      variables,
    });
    if (run.reason === 'use' || run.reason === 'late')
      findings.push({
        code: 'record.uncovered-use',
        text: `No paper says how ${name} was used from ${from} to ${to}: any use may have been flown.`,
        entries,
        remedy: 'State the use of this time with its paper, or have a named person state it',
      });
  }
  const own = new Set(segments.map((s) => s.index));
  for (const s of t.shared)
    if (s.variables.length > 0 && s.segments.some((n) => own.has(n)))
      gaps.push({
        id: s.entries.join('..'),
        from: s.from,
        to: s.to,
        because: 'Something changed, or was asked, between two readings',
        papers: [`Work report or flight log of ${name} with a reading, ${s.from} to ${s.to}`],
        what: ['hours', 'landings'],
        variables: s.variables,
      });
  return { gaps, findings };
}

/** Why a segment is open: the gap that covers it, a missing start, no stated use, no landings, shares only. */
function reasonOf(t: Timeline, s: Segment): string | null {
  if (s.gap === 'bare') return 'bare';
  if (s.gap) return `gap ${s.gap.entry.id}`;
  if (s.variables.size === 0) return null;
  if (isLate(t.ledger) && notAfter(s.to, t.ledger.knots[1]!.moment)) return s.periods.length === 0 ? 'late' : 'start';
  if (s.periods.length === 0) return 'use';
  if (s.landingsOpen) return 'landings';
  if (s.uses.length > 1) return 'split';
  return null;
}

const BECAUSE = {
  bare: 'No reading and no row covers this time',
  late: 'The book begins late; nothing before it is at hand',
  start: 'The book begins late; nothing before it is at hand',
  use: 'No paper says how it was used',
  landings: 'No reading counts the landings',
  split: 'The papers give the use as shares only',
};

function papersFor(reason: string, name: string, from: Day, to: Day): string[] {
  if (reason === 'use')
    return [`Statement of use for ${name}, ${from} to ${to}`, `Flight log ${name}, ${from} to ${to}`];
  if (reason === 'landings') return [`Landing count of ${name}, ${from} to ${to}`];
  if (reason === 'split') return [`Flight log ${name}, ${from} to ${to}`];
  return [`First logbook of ${name}, ${from} to ${to}`, `Statement of the owner of ${name} at that time`];
}

function whatOf(segments: readonly Segment[], open: boolean): What[] {
  if (!open) return [];
  const what: What[] = [];
  if (segments.some((s) => !isConstant(s.totalHours))) what.push('hours');
  if (segments.some((s) => !isConstant(s.totalLandings))) what.push('landings');
  if (segments.some((s) => s.uses.length > 1)) what.push('uses');
  if (segments.some((s) => [...s.inspections.values()].some((f) => !isConstant(f)))) what.push('inspections');
  return what;
}

function runsOf(segments: readonly Segment[], reason: (s: Segment) => string | null) {
  const runs: { reason: string; segments: Segment[] }[] = [];
  for (const s of segments) {
    const r = reason(s);
    if (r === null) continue;
    const last = runs.at(-1);
    if (last && last.reason === r && last.segments.at(-1)!.index === s.index - 1) last.segments.push(s);
    else runs.push({ reason: r, segments: [s] });
  }
  return runs;
}

/** First and last entry of a segment: a log of ten thousand rows is named by its ends. */
export function edgeEntries(s: Segment): string[] {
  const all = [...s.entries];
  const stated = [...s.periods.map((p) => p.entry.id), ...(s.gap && s.gap !== 'bare' ? [s.gap.entry.id] : [])];
  return [...new Set([...stated, ...(all.length > 12 ? [...all.slice(0, 6), ...all.slice(-6)] : all)])];
}
