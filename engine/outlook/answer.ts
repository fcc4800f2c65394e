import { bounds } from '../foundation/bounds.ts';
import { parseHours } from '../foundation/convert.ts';
import { parseDocument } from '../foundation/document.ts';
import { Refusal } from '../foundation/refusal.ts';
import { type Worked, worked } from '../foundation/working.ts';
import { type OutlookDocument, zOutlookDocument } from './document.ts';
import { type Flying, readFlying } from './flying.ts';
import type { LeftAtEnd, Outlook, OutlookOptions, RateFound, TodayEstimate } from './model.ts';
import { outlookOf } from './outlook.ts';
import type { Prior } from './prior.ts';
import { estimateToday } from './today.ts';
import { earlierArrival } from './when.ts';

export interface OutlookAnswer {
  readonly subject: string | null;
  readonly today: TodayEstimate;
  readonly rate: RateFound;
  /** One per limit, in the order of the document. */
  readonly limits: readonly { readonly name: string; readonly outlook: Outlook }[];
  /** The limit whose worse side comes first, by its P50. */
  readonly bitesFirst: string;
}

type Limit = OutlookDocument['limits'][number];

/** What is left to a limit at the last reading, worst and best. */
function ends(limit: Limit, flying: Flying): [LeftAtEnd, LeftAtEnd] {
  const h = limit.at_h;
  const at_s =
    h === undefined
      ? null
      : typeof h === 'object'
        ? bounds(parseHours(h.low_h), parseHours(h.high_h))
        : bounds(parseHours(h), parseHours(h));
  const n = limit.at_landings;
  const at_n = n === undefined ? null : typeof n === 'object' ? bounds(n.low, n.high) : bounds(n, n);
  if (at_n && flying.last.landings === undefined)
    throw new Refusal('outlook.limit-missing', {
      given: `"${limit.name}" counts landings, and the last reading of ${flying.last.day} has none`,
      allowed: 'a last reading with landings, for a limit at landings',
      remedy: 'Add the landings to the last reading',
    });
  const end = (side: 'low' | 'high'): LeftAtEnd => ({
    left_s: at_s ? at_s[side] - flying.last.total_s : null,
    left_landings: at_n ? at_n[side] - flying.last.landings! : null,
    onDay: limit.on_day ?? null,
  });
  return [end('low'), end('high')];
}

/**
 * Answers an outlook document.
 * @throws Refusal `foundation.document-invalid` and all that `outlook` refuses
 */
export function answerOutlook(input: unknown): Worked<OutlookAnswer> {
  const d = parseDocument(zOutlookDocument, input, 'outlook document');
  if (d.limits.length === 0)
    throw new Refusal('outlook.limit-missing', {
      given: 'no limit',
      allowed: 'one limit or more',
      remedy: 'Add the total or the day at which the limit is reached',
    });
  const readings = d.readings.map((r) => ({ day: r.day, total_s: parseHours(r.total_h), landings: r.landings }));
  const options: OutlookOptions = {
    rates_h_per_year: d.rates_h_per_year,
    staleAfter_days: d.stale_after_days,
    landingsPerHour: d.landings_per_hour,
    prior: stated(d.prior),
  };
  const flying = readFlying(readings, d.day, options);
  const all = d.limits.map((limit) => {
    const [worst, best] = ends(limit, flying);
    return { name: limit.name, answer: outlookOf(flying, d.day, worst, best, options) };
  });
  const first = all.reduce((a, b) => {
    const [x, y] = [a.answer.value.treatAs.p50, b.answer.value.treatAs.p50];
    return earlierArrival(x, y) === x ? a : b;
  });
  const common = all[0]!.answer.working.slice(0, 6);
  const own = all.flatMap(({ name, answer }) =>
    answer.working.slice(6).map((s) => ({ ...s, meaning: `${name}: ${s.meaning}` })),
  );
  return worked(
    {
      subject: d.subject ?? null,
      today: estimateToday(flying, d.day, d.stale_after_days),
      rate: flying.rate,
      limits: all.map(({ name, answer }) => ({ name, outlook: answer.value })),
      bitesFirst: first.name,
    },
    [...common, ...own],
    [...new Set(all.flatMap(({ answer }) => answer.warnings))],
  );
}

const stated = (prior: OutlookDocument['prior']): Partial<Prior> =>
  Object.fromEntries(Object.entries(prior ?? {}).filter(([, v]) => v !== undefined));
