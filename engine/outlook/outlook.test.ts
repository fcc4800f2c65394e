import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { addDays, type Day, dayFromNumber, dayNumber, parseDay } from '../foundation/day.ts';
import { isRefusal } from '../foundation/refusal.ts';
import { answerOutlook } from './answer.ts';
import { readFlying } from './flying.ts';
import type { TotalReading } from './intervals.ts';
import type { Arrival, Percentiles } from './model.ts';
import { outlook, outlookOf } from './outlook.ts';
import { estimateToday } from './today.ts';

const day = parseDay('2026-11-25');
const yearly = (rates: readonly number[], end: Day = day): TotalReading[] => {
  let total = 2000;
  return [0, ...rates].map((h, i) => {
    total += h;
    return { day: addDays(end, -365 * (rates.length - i)), total_s: total * 3600, landings: Math.round(total * 2) };
  });
};
const number = (a: Arrival): number => (a.is === 'not before' ? 1e9 + a.year : dayNumber(a.day));
const row = (p: Percentiles) => [number(p.p10), number(p.p50), number(p.p90)];
const years = (a: Arrival) => (number(a) - dayNumber(day)) / 365.25;
const h = (hours: number) => ({ left_s: hours * 3600 });

describe('O1 the day on which it bites', () => {
  it('a steady 50 h a year with 100 h left: about two years, and the band stands around it', () => {
    const { value } = outlook(yearly([52, 48, 50, 51, 49, 50]), day, h(100));
    expect(Math.abs(years(value.treatAs.p50) - 2)).toBeLessThan(0.25);
    expect(years(value.treatAs.p10)).toBeLessThan(1.9);
    expect(years(value.treatAs.p90)).toBeGreaterThan(2.1);
    expect(years(value.treatAs.p90)).toBeLessThan(5);
    expect(value.rate.h_per_year.p50).toBeGreaterThan(42);
    expect(value.rate.h_per_year.p50).toBeLessThan(58);
  });
  it('O5 a new owner in the record is found, and the forecast follows him', () => {
    const before = [20, 22, 19, 21, 20, 20].map((x) => x / 2);
    const { value, warnings } = outlook(yearly([...before, 85, 90, 88].flatMap((x) => [x])), day, h(90));
    expect(years(value.treatAs.p50)).toBeLessThan(1.5);
    expect(value.rate.changed).not.toBeNull();
    expect(value.rate.changed!.chance).toBeGreaterThan(0.5);
    expect(Math.abs(dayNumber(value.rate.changed!.from) - (dayNumber(day) - 3 * 365))).toBeLessThanOrEqual(366);
    expect(warnings.join()).toMatch(/seems to have changed/);
    expect(outlook(yearly([50, 52, 49, 50, 51, 50]), day, h(90)).value.rate.changed).toBeNull();
  });
  it('O6 an aircraft that stands still gets a year and no date', () => {
    const { value } = outlook(yearly([0, 0, 0, 0, 0, 0]), day, h(400));
    expect(value.treatAs.p90).toEqual({ is: 'not before', year: 2066 });
    expect(value.treatAs.p50.is).toBe('not before');
  });
  it('O7 a season that the record shows moves the day into the summer', () => {
    const readings: TotalReading[] = [];
    let total = 1000;
    for (let m = 0; m < 20; m++) {
      // Quarters over five years up to 1 December: nearly all is flown from June to August.
      readings.push({ day: addDays(parseDay('2021-12-01'), Math.round(m * 91.31)), total_s: total * 3600 });
      total += [3, 12, 40, 8][m % 4]!;
    }
    const { value } = outlook(readings, day, h(40));
    expect(value.rate.season).not.toBe('none shown');
    const month = Number((value.treatAs.p50 as { day: Day }).day.slice(5, 7));
    expect(month).toBeGreaterThanOrEqual(6);
    expect(month).toBeLessThanOrEqual(9);
  });
  it('O3 one reading: the prior alone, wide, and said', () => {
    const { value, warnings } = outlook([{ day, total_s: 3_600_000 }], day, h(60));
    expect(value.rate.basis).toBe('prior alone');
    expect(years(value.treatAs.p90) / years(value.treatAs.p10)).toBeGreaterThan(8);
    expect(warnings.join()).toMatch(/assumed from common practice/);
    const busy = outlook([{ day, total_s: 3_600_000 }], day, h(60), h(60), {
      prior: { median_h_per_year: 90, spread: 0.4 },
    });
    expect(years(busy.value.treatAs.p50)).toBeLessThan(years(value.treatAs.p50));
  });
});

describe('O4 landings, mixes and calendar', () => {
  const readings = yearly([50, 45, 55, 50, 52]);
  it('landings at two an hour come when the hours do', () => {
    const a = outlook(readings, day, { left_landings: 200 }).value;
    expect(Math.abs(years(a.treatAs.p50) - 2)).toBeLessThan(0.3);
    const bare = readings.map(({ landings: _, ...r }) => r);
    const b = outlook(bare, day, { left_landings: 200 }, { left_landings: 200 }, { landingsPerHour: 2 });
    expect(Math.abs(years(b.value.treatAs.p50) - 2)).toBeLessThan(0.3);
    expect(b.warnings.join()).toMatch(/2\.0 landings an hour are assumed/);
  });
  it('a counted figure of 1 an hour and 0.5 a landing goes at twice the hours', () => {
    const a = outlook(readings, day, { counted: { left: 200, perHour: 1, perLanding: 0.5 } }).value;
    expect(Math.abs(years(a.treatAs.p50) - 2)).toBeLessThan(0.3);
  });
  it('a calendar limit caps every percentile and every rate', () => {
    const on = parseDay('2027-06-30');
    const { value } = outlook(readings, day, { ...h(500), onDay: on });
    expect(value.treatAs).toEqual({
      p10: { is: 'day', day: on },
      p50: { is: 'day', day: on },
      p90: { is: 'day', day: on },
    });
    expect(value.atRates.map((r) => r.treatAs)).toEqual([25, 50, 100].map(() => ({ is: 'day', day: on })));
  });
  it('chosen rates: 100 h at 25, 50 and 100 h a year take 4, 2 and 1 years; at 0 never', () => {
    const { value } = outlook(readings, day, h(100), h(100), { rates_h_per_year: [25, 50, 100, 0] });
    expect(value.atRates.slice(0, 3).map((r) => r.treatAs)).toEqual(
      [1461, 730, 365].map((d) => ({ is: 'day', day: addDays(day, d) })),
    );
    expect(value.atRates[3]!.treatAs.is).toBe('not before');
  });
});

describe('O2 papers and chance stay apart', () => {
  const readings = yearly([40, 35, 52, 41]);
  it('each end has its own percentiles; spans carry them unmixed', () => {
    const { value } = outlook(readings, day, h(60), h(300));
    expect(value.treatAs).toEqual(outlook(readings, day, h(60)).value.treatAs);
    expect(value.couldBecome).toEqual(outlook(readings, day, h(300)).value.treatAs);
    expect(value.spans.papers).toEqual({ from: value.treatAs.p50, to: value.couldBecome.p50 });
    expect(value.spans.flying).toEqual({ from: value.treatAs.p10, to: value.treatAs.p90 });
    expect(value.spans.whole).toEqual({ from: value.treatAs.p10, to: value.couldBecome.p90 });
  });
  it('nothing is softer than the worse side, also when the two ends come exchanged', () => {
    const right = outlook(readings, day, h(60), h(300)).value;
    const wrong = outlook(readings, day, h(300), h(60)).value;
    expect(wrong.treatAs).toEqual(right.treatAs);
  });
  it('reached at the last reading is said so', () => {
    expect(outlook(readings, day, h(-3), h(200)).value.treatAs.p50).toEqual({ is: 'reached', day });
  });
});

describe('O8 age of the reading and today', () => {
  const old = yearly([50, 50, 50, 50], parseDay('2026-01-25'));
  it('a stale reading says so, and the estimate lies above it in order', () => {
    const flying = readFlying(old, day);
    const t = estimateToday(flying, day);
    expect(t).toMatchObject({ asOf: '2026-01-25', age_days: 304, stale: true, read_s: old[4]!.total_s });
    expect(t.total_s.p10).toBeGreaterThanOrEqual(t.read_s);
    expect(Math.abs((t.total_s.p50 - t.read_s) / 3600 - 41)).toBeLessThan(9);
    expect(t.total_s.p90).toBeGreaterThan(t.total_s.p50);
    expect(estimateToday(flying, day, 400).stale).toBe(false);
    expect(estimateToday(readFlying(old, parseDay('2026-01-25')), parseDay('2026-01-25')).total_s.p90).toBe(
      old[4]!.total_s,
    );
  });
  it('a limit that may have passed since the reading is said', () => {
    expect(outlook(old, day, h(20)).warnings.join()).toMatch(/may have been reached since the last reading/);
  });
});

describe('laws', () => {
  const record = fc
    .array(fc.record({ days: fc.integer({ min: 20, max: 500 }), tenths: fc.integer({ min: 0, max: 1500 }) }), {
      minLength: 0,
      maxLength: 8,
    })
    .map((steps) => {
      let [d, t] = [dayNumber(parseDay('2015-03-02')), 5000];
      const readings: TotalReading[] = [{ day: dayFromNumber(d), total_s: t * 360 }];
      for (const s of steps) {
        d += s.days;
        t += s.tenths;
        readings.push({ day: dayFromNumber(d), total_s: t * 360 });
      }
      return readings;
    });
  const runs = { numRuns: 40 };
  it('P10 is not after P50 nor P50 after P90; more left is never earlier', () => {
    fc.assert(
      fc.property(
        record,
        fc.integer({ min: 1, max: 900 }),
        fc.integer({ min: 0, max: 300 }),
        (readings, left, more) => {
          const flying = readFlying(readings, day);
          const a = row(outlookOf(flying, day, h(left)).value.treatAs);
          const b = row(outlookOf(flying, day, h(left + more)).value.treatAs);
          expect(a[0]!).toBeLessThanOrEqual(a[1]!);
          expect(a[1]!).toBeLessThanOrEqual(a[2]!);
          // The search stops at half a day or at 2e-4 of a standard score: allow that much.
          a.forEach((x, i) => {
            expect(x).toBeLessThanOrEqual(b[i]! + 2 + 0.002 * Math.max(0, b[i]! - flying.from));
          });
        },
      ),
      runs,
    );
  });
  it('a calendar limit never makes it later; the order of the readings does not matter', () => {
    fc.assert(
      fc.property(
        record,
        fc.integer({ min: 1, max: 900 }),
        fc.integer({ min: 0, max: 9000 }),
        (readings, left, days) => {
          const plain = outlook(readings, day, h(left)).value.treatAs;
          const capped = outlook([...readings].reverse(), day, { ...h(left), onDay: addDays(day, days) }).value.treatAs;
          row(capped).forEach((x, i) => {
            expect(x).toBe(Math.min(row(plain)[i]!, dayNumber(day) + days));
          });
        },
      ),
      runs,
    );
  });
  it('moving the record by whole 28-year cycles of the calendar moves the days with it', () => {
    const shift = (d: Day) => dayFromNumber(dayNumber(d) + 10_227);
    fc.assert(
      fc.property(record, fc.integer({ min: 1, max: 400 }), (readings, left) => {
        const a = outlook(readings, day, h(left)).value.treatAs.p50;
        const b = outlook(
          readings.map((r) => ({ ...r, day: shift(r.day) })),
          shift(day),
          h(left),
        ).value.treatAs.p50;
        if (a.is === 'day') expect(b).toEqual({ is: 'day', day: shift(a.day) });
      }),
      runs,
    );
  });
});

describe('refuses', () => {
  const good = yearly([50, 50]);
  const one = good[0]!;
  const at = (d: string, total: number) => ({ day: parseDay(d), total_s: total });
  it.each([
    ['outlook.no-reading', () => outlook([], day, h(1)), /total and the day/],
    ['outlook.reading-in-future', () => outlook([at('2026-11-26', 5)], day, h(1)), /2026-11-26/],
    [
      'outlook.readings-run-backwards',
      () => outlook([at('2020-01-01', 7200), at('2021-01-01', 3600)], day, h(1)),
      /2 h on 2020-01-01, then 1 h on 2021-01-01/,
    ],
    [
      'outlook.readings-run-backwards',
      () =>
        outlook(
          [
            { ...one, landings: 9 },
            { ...good[1]!, landings: 8 },
          ],
          day,
          h(1),
        ),
      /9 landings/,
    ],
    ['outlook.too-much-flown', () => outlook([at('2026-01-01', 0), at('2026-01-02', 49 * 3600)], day, h(1)), /49 h/],
    ['foundation.not-finite', () => outlook([at('2026-01-01', Number.NaN)], day, h(1)), /NaN/],
    ['foundation.not-finite', () => outlook(good, day, h(Number.POSITIVE_INFINITY)), /Infinity/],
    ['foundation.not-finite', () => outlook(good, day, h(1), { left_landings: Number.NaN }), /NaN/],
    ['outlook.limit-missing', () => outlook(good, day, {}), /hours, landings, counted figure or day/],
    ['outlook.prior-invalid', () => outlook(good, day, h(1), h(1), { prior: { spread: 9 } }), /spread 9/],
    ['outlook.rate-invalid', () => outlook(good, day, h(1), h(1), { rates_h_per_year: [-1] }), /-1 h a year/],
    ['outlook.rate-invalid', () => outlook(good, day, h(1), h(1), { landingsPerHour: 0 }), /0 landings per hour/],
    [
      'outlook.rate-invalid',
      () => outlook(good, day, { counted: { left: 4, perHour: 0, perLanding: 0 } }),
      /not both zero/,
    ],
    ['outlook.rate-invalid', () => outlook(good, day, h(1), h(1), { staleAfter_days: -2 }), /-2 days/],
  ] as const)('%s', (code, call, message) => {
    expect(call).toThrow(expect.objectContaining({ code }));
    expect(call).toThrow(message);
  });
});

describe('O9 the document', () => {
  const document = {
    sparwright: 'outlook/1',
    day: '2026-11-25',
    readings: [
      { day: '2022-05-01', total_h: '4310:30', landings: 9000 },
      { day: '2024-05-01', total_h: 4395.2, landings: 9170 },
      { day: '2026-10-20', total_h: 4502.7, landings: 9391 },
    ],
    limits: [
      { name: 'first look', at_h: { low_h: 4560, high_h: 4800 } },
      { name: 'overhaul', at_h: 5200, on_day: '2031-03-31' },
      { name: 'gear', at_landings: 9450 },
    ],
  };
  it('answers every limit, both ends, and names the one that bites first', () => {
    const { value, working, warnings } = answerOutlook(document);
    expect(value.limits.map((l) => l.name)).toEqual(['first look', 'overhaul', 'gear']);
    expect(value.bitesFirst).toBe('gear');
    const look = value.limits[0]!.outlook;
    expect(number(look.treatAs.p50)).toBeLessThan(number(look.couldBecome.p50));
    expect(value.limits[1]!.outlook.treatAs.p50).toEqual({ is: 'day', day: '2031-03-31' });
    expect(value.today).toMatchObject({ asOf: '2026-10-20', stale: false });
    expect(working.find((s) => s.symbol === 'prior')!.provenance!.known).toBe('invented');
    expect(working.some((s) => s.meaning.startsWith('gear:'))).toBe(true);
    expect(warnings.join()).toMatch(/new owner or a new use/);
  });
  it.each([
    ['foundation.document-invalid', { hours: 3 }, /hours/],
    ['foundation.document-invalid', { sparwright: 'outlook/2' }, /outlook/],
    ['foundation.document-invalid', { day: '2026-02-30' }, /day/],
    ['foundation.document-invalid', { readings: [{ day: '2026-01-01', total_h: Number.NaN }] }, /total_h/],
    ['foundation.document-invalid', { readings: [{ day: '2026-01-01', total: 4 }] }, /readings\.0/],
    ['foundation.document-invalid', { prior: { spread: -1 } }, /prior\.spread/],
    ['outlook.no-reading', { readings: [] }, /one reading/],
    ['outlook.reading-in-future', { day: '2025-01-01' }, /2026-10-20/],
    ['outlook.limit-missing', { limits: [] }, /one limit/],
    ['outlook.limit-missing', { limits: [{ name: 'nothing' }] }, /State what/],
    ['outlook.limit-missing', { readings: [{ day: '2026-01-01', total_h: 9 }] }, /gear/],
    ['foundation.bounds-reversed', { limits: [{ name: 'x', at_h: { low_h: 9000, high_h: 8000 } }] }, /lower end first/],
  ] as const)('%s %j', (code, change, message) => {
    const call = () => answerOutlook({ ...document, ...change });
    expect(call).toThrow(expect.objectContaining({ code }));
    expect(call).toThrow(message);
    try {
      call();
    } catch (e) {
      expect(isRefusal(e) && e.detail.remedy.length).toBeGreaterThan(8);
    }
  });
});
