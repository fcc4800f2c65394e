import { addDays, type Day, dayNumber } from '../../foundation/day.ts';
import { isRefusal } from '../../foundation/refusal.ts';
import { type Entry, type EntryOf, type Policy, USES } from '../document.ts';
import { type Circle, circleOf } from './circle.ts';
import type { Summed, SummedGap, SummedPeriod } from './model.ts';
import { NotPlain } from './not-plain.ts';
import { spansOf, type Walk, walkOf } from './walk.ts';

const LATE_DAYS = 400;
const CHANGES = 6;

/**
 * The totals of one aircraft and of everything that sits in it, if its record is plain.
 *
 * Plain: every reading declares a total and none falls; between two readings either rows list all that was flown
 * (up to 0.05 h, with use and landings each), or none does and both readings count landings; time without rows is of
 * one stated use, or lies in one declared gap; every part was fitted with the aircraft and never left; no opening,
 * kit, event, alternative or share of use. Then each open stretch is a set of histories of its own, and the whole
 * way (`lifeOf`) gives the same bounds through its solver.
 *
 * @param entries entries that stand (corrections applied), of the aircraft and of all that ever sat in it
 * @returns the sums, or why the record is not plain; what `modelOf` would refuse is not plain
 */
export function sumsOf(entries: readonly Entry[], aircraft: string, policy: Policy): Summed {
  try {
    const circle = circleOf(entries, aircraft);
    return { sums: made(circle, policy), why: null };
  } catch (e) {
    if (e instanceof NotPlain || isRefusal(e)) return { sums: null, why: e.message };
    throw e;
  }
}

function made(circle: Circle, policy: Policy) {
  const { opening, own } = circle;
  const built = opening.body.built as Day;
  const uses = usesOf(own);
  const walk = walkOf(circle, uses);
  const periods = periodsOf(own);
  const gaps = gapsOf(own, circle.named.registration ?? '', dayNumber(built), walk.known);
  refuseLate(walk, dayNumber(built));
  const spans = spansOf(walk, periods, gaps, uses, policy);
  return {
    aircraft: opening.subject,
    registration: circle.named.registration ?? '',
    model: circle.named.model,
    serial: circle.named.serial,
    built,
    things: circle.things,
    uses,
    newest: circle.newest,
    known: walk.known,
    periods,
    gaps,
    useChanges: own
      .flatMap((e) => (e.kind === 'use' ? [addDays(e.body.from as Day, -1)] : []))
      .sort()
      .reverse()
      .slice(0, CHANGES),
    rows: Int32Array.from(walk.rows.flatMap((r) => [r.day, r.use, r.hours_s, r.landings])),
    spans,
    readings: Int32Array.from(walk.readings.flatMap((r) => [r.day, r.total_s, r.landings ?? -1])),
  };
}

/** The usual list, and every use that the papers themselves name. */
function usesOf(own: readonly Entry[]): string[] {
  const uses = new Set<string>(USES);
  for (const e of own) if ((e.kind === 'flights' || e.kind === 'use') && e.body.use !== undefined) uses.add(e.body.use);
  return [...uses];
}

function periodsOf(own: readonly Entry[]): SummedPeriod[] {
  return own
    .filter((e): e is EntryOf<'use'> => e.kind === 'use')
    .map(({ body: b }) => {
      const use = b.rest ?? b.use;
      if (use === undefined || b.split?.length || b.rest !== undefined) throw new NotPlain('a share of uses');
      if (b.to !== undefined && b.to < b.from) throw new NotPlain('a period that is reversed');
      return { after: dayNumber(b.from as Day) - 1, to: b.to === undefined ? null : dayNumber(b.to as Day), use };
    });
}

function gapsOf(own: readonly Entry[], name: string, built: number, known: number): SummedGap[] {
  const gaps = own
    .filter((e): e is EntryOf<'gap'> => e.kind === 'gap')
    .map(({ body: b }) => ({
      after: dayNumber(b.from as Day) - 1,
      to: dayNumber(b.to as Day),
      paper: b.paper_wanted ?? `Logbook ${name}, ${b.from} to ${b.to}`,
    }))
    .sort((a, b) => a.after - b.after);
  gaps.forEach((g, i) => {
    if (g.to <= g.after || g.after < built || g.to >= known) throw new NotPlain('a gap at an end of the record');
    if (i > 0 && g.after < gaps[i - 1]!.to) throw new NotPlain('gaps that overlap');
  });
  return gaps;
}

function refuseLate(walk: Walk, built: number): void {
  const first = walk.open[0];
  if (first && first.from === built && first.to - built > LATE_DAYS) throw new NotPlain('a book that begins late');
}
