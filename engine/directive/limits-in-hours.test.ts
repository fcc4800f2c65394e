import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Day } from '../foundation/index.ts';
import { lifeOf, modelOf, readRecord } from '../record/index.ts';
import { assessAll, limitsInHours, mixAllIn, readDirective, shortestLimits } from './index.ts';
import { entry, flownAs, rule, smallRecord } from './testing/rule.ts';

const day = '2022-01-01' as Day;
const SINCE_LOOK = { last_look: [{ directive: 'T-1', action: 'look' }] };
type Action = Parameters<typeof rule>[0];
/** 1 400 h and 2 000 landings by then; 400 h and 500 landings in the last two years: 1.25 landings an hour. */
function limits(
  action: Action,
  more: readonly object[] = [flownAs('private')],
  slow: number | null = 100,
  use?: string,
) {
  const model = modelOf(readRecord(smallRecord(more)));
  const documents = [readDirective(rule(action))];
  const ahead = use ? (l: ReturnType<typeof lifeOf>) => mixAllIn(use, l, 5) : undefined;
  const assessments = assessAll(documents, model, day, ahead);
  const life = lifeOf(model, 'sp', { until: day });
  return limitsInHours({ documents, model, life, day, assessments, slow_h_per_year: slow });
}
const looked = (on: string) =>
  entry('accomplished', 'sp', on, { directive: 'T-1', issue: 1, action: 'look', finding: 'none' });

describe('limits in hours, each worked by hand from 1 400 h and 2 000 landings', () => {
  it.each`
    what                                   | first                                                         | first_at_h | left_h
    ${'hours of the part since new'}       | ${{ hours_h: 2000, is: 'at', of: 'part', since: 'new' }}      | ${2000}    | ${600}
    ${'landings, 1.25 an hour'}            | ${{ landings: 3000, is: 'at', of: 'part', since: 'new' }}     | ${2200}    | ${800}
    ${'overdue is negative'}               | ${{ hours_h: 1300, is: 'at', of: 'part', since: 'new' }}      | ${1300}    | ${-100}
    ${'at the limit: nothing is left'}     | ${{ hours_h: 1400, is: 'at', of: 'part', since: 'new' }}      | ${1400}    | ${0}
    ${'hours after the effective date'}    | ${{ hours_h: 500, is: 'at', of: 'part', since: 'effective' }} | ${1500}    | ${100}
    ${'a date a year ahead, 100 h a year'} | ${{ on: '2023-01-01', is: 'at' }}                             | ${1499.93} | ${99.93}
    ${'the first of hours and date'} | ${{ first_of: [{ hours_h: 2000, is: 'at', of: 'part', since: 'new' }, { on: '2023-01-01', is: 'at' }] }} | ${1499.93} | ${99.93}
    ${'a date a year ago'}                 | ${{ on: '2021-01-01', is: 'at' }}                             | ${1300.06} | ${-99.94}
    ${'before further flight'}             | ${{ before_further_flight: true }}                            | ${1400}    | ${0}
  `('$what', ({ first, first_at_h, left_h }) => {
    const [l] = limits({ first });
    expect(l?.first_at_h).toBeCloseTo(first_at_h, 2);
    expect(l?.left_h).toBeCloseTo(left_h, 2);
    expect(l?.repeat_h).toBeNull();
  });
  it('a repeat by the directive’s own formula: a tow counts three times, the mix tows a quarter of its hours', () => {
    // 100 h with 260 landings towing, 300 h with 240 landings private: 0.65 + 0.60 landings an hour, 0.65 twice more.
    const use = entry('use', 'ac', '2020-01-02', {
      from: '2020-01-02',
      split: [{ use: 'tow', hours_h: 100, landings: 260 }],
      rest: 'private',
    });
    const before = entry('use', 'ac', '2010-01-01', { from: '2010-01-01', to: '2020-01-01', use: 'private' });
    const counts = {
      expression: 'landings.total + 2.0 * landings.tow',
      called: 'counted landings',
      unit: 'landings',
    } as const;
    const [l] = limits(
      { counts, first: { counted: 4000, is: 'at' }, repeat: { counted: 510, is: 'at', since: SINCE_LOOK } },
      [before, use],
    );
    expect(l?.repeat_h).toBeCloseTo(510 / (1.25 + 2 * 0.65), 1);
    // 1 480 counted are left: 725.5 landings of the mix, and the meter counts whole ones.
    expect(l?.left_h).toBeCloseTo(725 / 1.25, 2);
    expect(l?.first_at_h).toBeCloseTo(1400 + 580, 2);
    expect(l?.reference).toMatch(
      /^T-1 issue 1 \(invented\): 4 000 counted landings; then 510 counted landings since .* turned into hours at 2\.55 counted landings an hour$/,
    );
  });
  it('is overdue by no more hours than the part has flown', () => {
    // 2 000 landings against 10, told at 1.25 landings an hour, are 1 592 h over, and the part has flown 1 400.
    const [l] = limits({ first: { landings: 10, is: 'at', of: 'part', since: 'new' } });
    expect(l?.left_h).toBe(-1400);
    expect(l?.first_at_h).toBe(0);
  });
  it('a part that came with 100 to 300 h: a first limit in landings is told from the least it has flown', () => {
    const opening = entry('opening', 'sp', '2010-01-01', {
      basis: 'donor_record',
      hours_h: { low_h: 100, high_h: 300 },
      landings: 0,
    });
    const [l] = limits({ first: { landings: 3000, is: 'at', of: 'part', since: 'new' } }, [
      flownAs('private'),
      opening,
    ]);
    expect(l).toMatchObject({ left_h: 800, first_at_h: 1400 + 100 + 800 });
  });
  it('once looked at, what is left runs to the next look, and the first limit stays as it was', () => {
    const [l] = limits(
      {
        first: { landings: 1000, is: 'at', of: 'part', since: 'new' },
        repeat: { hours_h: 600, is: 'at', of: 'part', since: SINCE_LOOK },
      },
      [flownAs('private'), looked('2020-01-01')],
    );
    expect(l).toMatchObject({ first_at_h: 800, repeat_h: 600, left_h: 200 });
  });
  it('the calendar brings a repeat forward only where the slow flying is known', () => {
    const action: Action = {
      first: { hours_h: 100, is: 'at', of: 'part', since: 'new' },
      repeat: {
        first_of: [
          { hours_h: 600, is: 'at', of: 'part', since: SINCE_LOOK },
          { months: 36, is: 'at', since: SINCE_LOOK },
        ],
      },
    };
    const repeat = (slow: number | null) => limits(action, [flownAs('private'), looked('2021-12-01')], slow)[0];
    expect(repeat(100)?.repeat_h).toBe(300);
    expect(repeat(400)?.repeat_h).toBe(600);
    expect(repeat(null)?.repeat_h).toBe(600);
    expect(repeat(100)?.reference).toMatch(/100 h a year at the slowest/);
  });
  it('of whichever comes later the later, unless one is not known', () => {
    const repeat = {
      later_of: [
        { hours_h: 600, is: 'at', of: 'part', since: SINCE_LOOK },
        { months: 36, is: 'at', since: SINCE_LOOK },
      ],
    } as const;
    const first = { hours_h: 100, is: 'at', of: 'part', since: 'new' } as const;
    expect(limits({ first, repeat: repeat as never })[0]?.repeat_h).toBe(600);
    expect(limits({ first, repeat: repeat as never }, [flownAs('private')], 400)[0]?.repeat_h).toBe(1200);
    expect(limits({ first, repeat: repeat as never }, [flownAs('private')], null)[0]?.repeat_h).toBe(600);
  });
  it('ended, not affected, and what is no look are not listed; what cannot be computed has nothing left', () => {
    const first = { hours_h: 2000, is: 'at', of: 'part', since: 'new' } as const;
    expect(limits({ first, affects: { models: [{ model: 'Other' }] } })).toEqual([]);
    expect(limits({ first }, [flownAs('private'), looked('2021-01-01')])).toEqual([]);
    expect(limits({ first, does: 'report' })).toEqual([]);
    expect(limits({ first, does: 'replace' })).toHaveLength(1);
    const model = modelOf(readRecord(smallRecord([flownAs('private')])));
    const documents = [
      readDirective({
        ...rule({ first }),
        cases: [{ name: 'no', action: 'look', day: '2020-01-02', facts: {}, expect: { standing: 'overdue' } }],
      }),
    ];
    const [l] = limitsInHours({
      documents,
      model,
      life: lifeOf(model, 'sp', { until: day }),
      day,
      assessments: assessAll(documents, model, day),
      slow_h_per_year: null,
    });
    expect(l).toMatchObject({ left_h: 0, first_at_h: 2000 });
    expect(l?.reference).toMatch(/not computed/);
  });
});

describe('laws', () => {
  it('more landings an hour never give more hours, and the shortest of several is none of the longer', () => {
    fc.assert(
      fc.property(fc.integer({ min: 2001, max: 50_000 }), fc.integer({ min: 1, max: 5000 }), (landings, again) => {
        const action: Action = {
          first: { landings, is: 'at', of: 'part', since: 'new' },
          repeat: { landings: again, is: 'at', of: 'part', since: SINCE_LOOK },
        };
        const [mine, towing] = [limits(action), limits(action, [flownAs('private')], 100, 'tow')];
        expect(towing[0]!.left_h!).toBeLessThanOrEqual(mine[0]!.left_h!);
        expect(towing[0]!.repeat_h!).toBeLessThanOrEqual(mine[0]!.repeat_h!);
        // In either order, and told by the words of the one that leaves least.
        for (const both of [
          [mine, towing],
          [towing, mine],
        ])
          expect(shortestLimits(both)).toEqual(towing);
      }),
      { numRuns: 25 },
    );
  });
  it('a gap in the record never gives more than any history that fills it', () => {
    const first = { landings: 3000, is: 'at', of: 'part', since: 'new' } as const;
    const gap = entry('gap', 'ac', '2020-06-01', {
      from: '2020-06-01',
      to: '2021-06-01',
      because: 'lost',
      paper_wanted: 'log',
    });
    const [open] = limits({ first }, [flownAs('private'), gap]);
    const [closed] = limits({ first });
    expect(open!.left_h!).toBeLessThanOrEqual(closed!.left_h!);
    expect(open!.first_at_h!).toBeLessThanOrEqual(closed!.first_at_h!);
  });
});
