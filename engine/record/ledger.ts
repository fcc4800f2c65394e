import { type Bounds, exactly } from '../foundation/bounds.ts';
import type { Moment } from '../foundation/day.ts';
import { hoursText, SLIP_S, seconds } from './amounts.ts';
import { entriesBySubject } from './by-subject.ts';
import type { Entry, EntryOf, Policy } from './document.ts';
import type { Knot, LandingKnot } from './knots.ts';
import type { Finding } from './model.ts';
import { firstNotBefore, momentOf, startOf } from './moments.ts';
import { withStatedTotals } from './stated-totals.ts';
import { readTotals } from './totals.ts';

/** A row of flying as listed, with the intervals between readings in which it lies. */
export interface FlightsRow {
  readonly entry: EntryOf<'flights'>;
  readonly from: Moment;
  readonly to: Moment;
  readonly hours_s: number;
  readonly landings: number | null;
  readonly use: string | null;
}
/** Between two knots (the last is open to the end): what the readings say, less what rows list. */
export interface Interval {
  readonly rows: readonly FlightsRow[];
  /** Flown besides the rows. */
  readonly rest_s: Bounds;
  /** Rows list more than was flown: each row is then a ceiling, and `all_s` the sum. */
  readonly all_s: number | null;
  readonly from: Knot;
  readonly to: Knot | null;
}
export interface LandingInterval {
  /** Landings besides those of rows; null where no reading closes it. */
  readonly rest: number | null;
  /** Landings since the knot before. */
  readonly all: number | null;
  readonly over: boolean;
  readonly from: LandingKnot;
  readonly to: LandingKnot | null;
}
export interface Ledger {
  readonly aircraft: string;
  readonly built: Moment;
  readonly knots: readonly Knot[];
  readonly landingKnots: readonly LandingKnot[];
  readonly intervals: readonly Interval[];
  readonly landingIntervals: readonly LandingInterval[];
  readonly rows: readonly FlightsRow[];
  readonly findings: readonly Finding[];
}

const memo = new WeakMap<readonly Entry[], Map<string, Ledger>>();

/** Totals and rows of an aircraft, added up against each other. Built once per record. */
export function ledgerOf(model: { entries: readonly Entry[]; policy: Policy }, aircraft: string): Ledger | null {
  let made = memo.get(model.entries);
  if (!made) {
    made = new Map();
    memo.set(model.entries, made);
  }
  let ledger = made.get(aircraft);
  if (!ledger) {
    const own = entriesBySubject(model.entries).get(aircraft) ?? [];
    const opening = own.find((e): e is EntryOf<'aircraft'> => e.kind === 'aircraft');
    if (!opening) return null;
    ledger = write(aircraft, opening, withStatedTotals(model.entries, own, aircraft), model.policy);
    made.set(aircraft, ledger);
  }
  return ledger;
}

function write(aircraft: string, opening: EntryOf<'aircraft'>, own: readonly Entry[], policy: Policy): Ledger {
  const totals = readTotals(opening, own, policy);
  const findings = [...totals.findings];
  const rows = own
    .filter((e): e is EntryOf<'flights'> => e.kind === 'flights')
    .map(
      (e): FlightsRow => ({
        entry: e,
        from: e.body.from === undefined ? momentOf(e) : startOf(e.body.from),
        to: momentOf(e),
        hours_s: seconds(e.body.hours_h),
        landings: e.body.landings ?? null,
        use: e.body.use ?? null,
      }),
    );
  tooMuchInADay(rows, findings);
  const perInterval: FlightsRow[][] = totals.knots.map(() => []);
  const moments = totals.knots.map((k) => k.moment);
  for (const r of rows) perInterval[Math.max(0, firstNotBefore(moments, r.to) - 1)]!.push(r);
  const intervals = totals.knots.map((from, i) =>
    intervalOf(from, totals.knots[i + 1] ?? null, perInterval[i]!, findings),
  );
  const perLanding: FlightsRow[][] = totals.landingKnots.map(() => []);
  const landingMoments = totals.landingKnots.map((k) => k.moment);
  for (const r of rows) perLanding[Math.max(0, firstNotBefore(landingMoments, r.to) - 1)]!.push(r);
  const landingIntervals = totals.landingKnots.map((from, i) =>
    landingIntervalOf(from, totals.landingKnots[i + 1] ?? null, perLanding[i]!, findings),
  );
  return { aircraft, built: totals.knots[0]!.moment, ...totals, intervals, landingIntervals, rows, findings };
}

function intervalOf(from: Knot, to: Knot | null, rows: FlightsRow[], findings: Finding[]): Interval {
  if (!to) return { rows, rest_s: exactly(0), all_s: null, from, to };
  const listed = rows.reduce((t, r) => t + r.hours_s, 0);
  const rest = { low: to.since_s.low - listed, high: to.since_s.high - listed };
  if (rows.length === 0) return { rows, rest_s: rest, all_s: null, from, to };
  if (rest.high < -SLIP_S) {
    findings.push(
      slip(
        'record.carried-total-slip',
        `list ${hoursText(listed)}, the totals say ${hoursText(to.since_s.high)}`,
        from,
        to,
      ),
    );
    return { rows, rest_s: exactly(0), all_s: to.since_s.high, from, to };
  }
  if (rest.low > SLIP_S) {
    findings.push({
      ...slip(
        'record.uncovered-hours',
        `list ${hoursText(listed)}, the totals say ${hoursText(to.since_s.low)}`,
        from,
        to,
      ),
      remedy: 'Look for the missing rows; until then the rest may have been any use',
    });
    return { rows, rest_s: rest, all_s: null, from, to };
  }
  if (rest.low < rest.high)
    return { rows, rest_s: { low: Math.max(0, rest.low), high: Math.max(0, rest.high) }, all_s: null, from, to };
  return {
    rows: withLast(rows, (r) => ({ ...r, hours_s: Math.max(0, r.hours_s + rest.low) })),
    rest_s: exactly(0),
    all_s: null,
    from,
    to,
  };
}

function landingIntervalOf(
  from: LandingKnot,
  to: LandingKnot | null,
  rows: FlightsRow[],
  findings: Finding[],
): LandingInterval {
  if (!to) return { rest: null, all: null, over: false, from, to };
  const all = to.landings - from.landings;
  const rest = all - rows.reduce((t, r) => t + (r.landings ?? 0), 0);
  if (rest < 0)
    findings.push(slip('record.carried-landings-slip', `list ${all - rest} landings, the totals say ${all}`, from, to));
  return { rest: Math.max(0, rest), all, over: rest < 0, from, to };
}

const withLast = <T>(list: readonly T[], change: (t: T) => T): T[] =>
  list.map((x, i) => (i === list.length - 1 ? change(x) : x));

type Edge = { moment: Moment; entry: string };
const slip = (code: string, what: string, from: Edge, to: Edge): Finding => ({
  code,
  text: `From ${from.moment.day} to ${to.moment.day} the rows ${what}. The declared total stands.`,
  entries: [from.entry, to.entry],
  remedy: 'Add the rows up again and look for the one that is wrong or missing',
});

function tooMuchInADay(rows: readonly FlightsRow[], findings: Finding[]): void {
  const perDay = new Map<string, FlightsRow[]>();
  for (const r of rows)
    if (r.entry.body.from === undefined) {
      const list = perDay.get(r.to.day);
      if (list) list.push(r);
      else perDay.set(r.to.day, [r]);
    }
  for (const [day, list] of perDay) {
    const sum = list.reduce((t, r) => t + r.hours_s, 0);
    if (sum > 86_400)
      findings.push({
        code: 'record.more-than-24-hours-a-day',
        text: `${hoursText(sum)} are listed on ${day}: more than 24 hours a day.`,
        entries: list.map((r) => r.entry.id),
        remedy: 'Correct the day or the hours',
      });
  }
}
