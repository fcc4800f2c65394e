import fc from 'fast-check';
import { expect, it } from 'vitest';
import { addDays, type Day } from '../foundation/day.ts';
import { isFeasible } from '../foundation/region/index.ts';
import { type EntryInput, lifeOf } from './index.ts';
import { A, aircraft, entry, model, reading } from './testing/write.ts';

const START = '2000-01-01' as Day;
const day = (n: number): Day => addDays(START, n);
const nat = (max: number) => fc.integer({ min: 0, max });
/** Entries in any order, that may contradict each other in every way. */
const any = fc.oneof(
  fc
    .record({ d: nat(1500), h: nat(3000), l: fc.option(nat(9000)) })
    .map((x) => reading(day(x.d), x.h, x.l ?? undefined)),
  fc
    .record({
      d: nat(1500),
      h: nat(30),
      l: fc.option(nat(90)),
      u: fc.constantFrom('tow', 'hire', undefined),
      back: fc.option(nat(40)),
    })
    .map((x) =>
      entry('flights', A, day(x.d), {
        hours_h: x.h,
        ...(x.l === null ? {} : { landings: x.l }),
        ...(x.u ? { use: x.u } : {}),
        ...(x.back === null ? {} : { from: day(x.d - x.back) }),
      }),
    ),
  fc
    .record({ d: nat(1500), n: nat(900), h: nat(300), l: nat(2000), rest: fc.constantFrom('private', undefined) })
    .map((x) =>
      entry('use', A, day(x.d), {
        from: day(x.d),
        to: day(x.d + x.n),
        split: [{ use: 'tow', hours_h: x.h, landings: x.l }],
        ...(x.rest ? { rest: x.rest } : {}),
      }),
    ),
  fc
    .record({ d: nat(1500), n: nat(900), u: fc.constantFrom('tow', 'private') })
    .map((x) => entry('use', A, day(x.d), { from: day(x.d), to: day(x.d + x.n), use: x.u })),
  fc
    .record({ d: nat(1500), n: nat(300) })
    .map((x) => entry('gap', A, day(x.d), { from: day(x.d), to: day(x.d + x.n), because: 'lost' })),
  fc.record({ d: nat(1500), h: nat(900) }).map((x) => entry('reading', A, day(x.d), { meter: 'm', shows_h: x.h })),
  fc.record({ d: nat(1500), h: nat(900) }).map((x) =>
    entry('meter', A, day(x.d), {
      meter: 'm',
      counts: 'tachometer',
      shows_h: x.h,
      rolls_over_at_h: 1000,
      service_per_hour: { low: 0.9, high: 1.1 },
    }),
  ),
);

it('papers that contradict each other give findings, not a record without histories', () => {
  fc.assert(
    fc.property(fc.array(any, { minLength: 1, maxLength: 10 }), nat(2000), (entries: EntryInput[], cut) => {
      const m = model([aircraft(START), ...entries], '2020-01-01', { uses: ['private', 'tow', 'hire'] });
      const life = lifeOf(m, A, { until: m.day, cuts: [day(cut)] });
      expect(isFeasible(life.region)).toBe(true);
    }),
    { numRuns: 300 },
  );
});
