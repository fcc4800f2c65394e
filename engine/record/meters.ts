import type { Bounds } from '../foundation/bounds.ts';
import { SECONDS_PER_HOUR } from '../foundation/convert.ts';
import { daysBetween } from '../foundation/day.ts';
import { hoursText, SLIP_S, seconds } from './amounts.ts';
import type { EntryOf, Policy } from './document.ts';
import type { Knot } from './knots.ts';
import type { Finding } from './model.ts';

interface Dial {
  readonly fitted: EntryOf<'meter'> | null;
  shows_s: number;
  /** Total of the aircraft when it showed this. */
  total: Bounds;
  day: EntryOf<'meter'>['day'];
  entry: string;
}

/** Total by a meter; `run` is what it ran since the entry at which it was seen before. */
export interface MeterTotal extends Bounds {
  readonly run: { readonly since: string; readonly flown: Bounds } | null;
}

/**
 * What the meters say, one after the other: each meter is followed from reading to reading, over roll-overs and
 * changes, and turned into time in service by its factor. A meter fitted between two readings starts at a total
 * that only the ceiling on hours per day bounds.
 *
 * A meter that no entry fits is taken as fitted new with the aircraft, and said so.
 */
export class Meters {
  readonly #dials = new Map<string, Dial>();
  readonly #policy: Policy;
  readonly #findings: Finding[];
  constructor(policy: Policy, findings: Finding[]) {
    this.#policy = policy;
    this.#findings = findings;
  }

  fit(e: EntryOf<'meter'>, last: Knot): void {
    const idle = daysBetween(last.moment.day, e.day);
    const total = {
      low: last.total.low,
      high: last.total.high + idle * this.#policy.ceiling_hours_per_day * SECONDS_PER_HOUR,
    };
    this.#dials.set(e.body.meter, { fitted: e, shows_s: seconds(e.body.shows_h ?? 0), total, day: e.day, entry: e.id });
    if (e.body.counts === 'tachometer' && !e.body.service_per_hour)
      this.#findings.push({
        code: 'record.tachometer-without-factor',
        text: `Meter ${e.body.meter} is a tachometer; it counts true only at its reference speed, and no factor is stated. Its hours are taken as they stand.`,
        entries: [e.id],
        remedy: 'State the time in service per hour of this meter, or give declared totals',
      });
  }

  /** Total by this meter, or null where it cannot be told. */
  read(e: EntryOf<'reading'>, first: Knot): MeterTotal | null {
    const name = e.body.meter!;
    const shows = seconds(e.body.shows_h!);
    const dial = this.#dials.get(name);
    if (!dial) {
      this.#findings.push({
        code: 'record.meter-without-start',
        text: `No entry says when meter ${name} was fitted${e.body.total_h === undefined ? '; it is taken as fitted new with the aircraft' : ''}.`,
        entries: [e.id],
        remedy: 'Record when it was fitted and what it showed then',
      });
      return e.body.total_h === undefined
        ? { low: first.total.low + shows, high: first.total.high + shows, run: null }
        : null;
    }
    let run = shows - dial.shows_s;
    const rolls = dial.fitted?.body.rolls_over_at_h;
    if (run < 0 && rolls !== undefined) run += turnOf(seconds(rolls));
    if (run < 0) {
      this.#findings.push({
        code: 'record.meter-runs-backwards',
        text: `Meter ${name} shows ${hoursText(shows)} on ${e.day}, less than ${hoursText(dial.shows_s)} on ${dial.day}.`,
        entries: [dial.entry, e.id],
        remedy: 'Correct the reading, or record the change of meter or where it rolls over',
      });
      return null;
    }
    const factor = dial.fitted?.body.service_per_hour ?? { low: 1, high: 1 };
    const flown = { low: Math.round(run * factor.low), high: Math.round(run * factor.high) };
    return {
      low: dial.total.low + flown.low,
      high: dial.total.high + flown.high,
      run: { since: dial.entry, flown },
    };
  }

  /** The meter showed this at that total; also places meters fitted on the same day. */
  settle(e: EntryOf<'reading'>, knot: Knot): void {
    const name = e.body.meter;
    for (const d of this.#dials.values()) if (d.fitted?.id === d.entry && d.day === e.day) d.total = knot.total;
    if (name === undefined) return;
    const fitted = this.#dials.get(name)?.fitted ?? null;
    this.#dials.set(name, { fitted, shows_s: seconds(e.body.shows_h!), total: knot.total, day: e.day, entry: e.id });
  }

  /** A declared total beside what the meter says: the total stands, the difference is a finding. */
  compare(e: EntryOf<'reading'>, total_s: number, byMeter: Bounds | null): void {
    if (!byMeter || (total_s >= byMeter.low - SLIP_S && total_s <= byMeter.high + SLIP_S)) return;
    this.#findings.push({
      code: 'record.meter-disagrees',
      text: `The total of ${hoursText(total_s)} declared on ${e.day} is not what meter ${e.body.meter} gives (${boundsText(byMeter)}). The declared total stands.`,
      entries: [e.id],
      remedy: 'Look for a change of meter, a roll-over or a slip in the book',
    });
  }
}
const boundsText = (b: Bounds): string =>
  b.low === b.high ? hoursText(b.low) : `${hoursText(b.low)} to ${hoursText(b.high)}`;

/** A meter said to roll over at its last figure, 999.9 or 9 999.99, turns with the step after it: 1 000 or 10 000 h. */
function turnOf(rolls_s: number): number {
  const whole_s = Math.ceil(rolls_s / SECONDS_PER_HOUR) * SECONDS_PER_HOUR;
  const short_s = whole_s - rolls_s;
  return short_s === SECONDS_PER_HOUR / 10 || short_s === SECONDS_PER_HOUR / 100 ? whole_s : rolls_s;
}
