import { describe, expect, it } from 'vitest';
import type { Day } from '../foundation/day.ts';
import { modelOf, readRecord } from '../record/index.ts';
import { overDisputes } from './disputed.ts';
import { assessAll, readDirective } from './index.ts';
import { entry, rule } from './testing/rule.ts';

const START = '2015-01-01' as Day;
const TODAY = '2022-01-01' as Day;
const model = (more: readonly object[]) =>
  modelOf(
    readRecord({
      sparwright: 'record/1',
      day: TODAY,
      entries: [
        entry('aircraft', 'ac', START, { registration: 'T', type: 'T', model: 'M', serial: '0100', built: START }),
        entry('part', 'sp', START, { part: 'spar', hand: 'left', part_number: 'P-1', built: START }),
        entry('fitment', 'sp', START, { into: 'ac', place: 'left_spar' }, { order: 1 }),
        ...more,
      ],
    }),
  );
const worst = (of: Parameters<typeof rule>[0], more: readonly object[], over = {}) =>
  assessAll([readDirective(rule(of, over))], model(more), TODAY)[0]!;

describe('readings that cross, stated more than once', () => {
  const since = { effective: '2019-01-01', issued: '2019-01-01' };
  const read = (day: string, total_h: number) => entry('reading', 'ac', day, { total_h });
  const seen = (day: string, total_h: number) => entry('inspection', 'ac', day, { wording: '100 h', total_h });
  const high = [
    ['2018-03-01', 900],
    ['2018-09-01', 1000],
    ['2018-12-01', 1100],
  ] as const;
  const low = [read('2020-06-01', 300), read('2021-06-01', 500)];
  const first = { hours_h: 150, is: 'at', of: 'aircraft', since: 'effective' } as const;
  it('an inspection that repeats a reading is not believed where the reading is not', () => {
    const plain = worst({ first }, [...high.map(([d, h]) => read(d, h)), ...low], since);
    const twice = worst({ first }, [...high.flatMap(([d, h]) => [read(d, h), seen(d, h)]), ...low], since);
    expect(plain.standing.worst).toBe('overdue');
    expect(twice.standing.worst).toBe(plain.standing.worst);
    expect(twice.treatAs.left?.value).toBe(plain.treatAs.left?.value);
  });
  it('landings that work states cross as those of a reading do', () => {
    const rows = (work: object) => [
      entry('reading', 'ac', '2018-01-01', { total_h: 300, landings: 300 }),
      work,
      entry('reading', 'ac', '2020-01-01', { total_h: 500, landings: 400 }),
      entry('reading', 'ac', '2021-01-01', { total_h: 600, landings: 500 }),
    ];
    const limit = { first: { landings: 850, is: 'at', of: 'part', since: 'new' } } as const;
    const body = { directive: 'X', issue: 1, action: 'x', finding: 'none', total_h: 400, landings: 800 };
    const asReading = worst(limit, rows(entry('reading', 'ac', '2019-01-01', { total_h: 400, landings: 800 })));
    const asWork = worst(limit, rows(entry('accomplished', 'ac', '2019-01-01', body)));
    expect(asReading.standing.worst).toBe('overdue');
    expect(asWork.standing.worst).toBe('overdue');
  });
  it('a meter that shows less than before: what it showed before may be wrong, and it ran on', () => {
    const meter = entry('meter', 'ac', START, { meter: 'hobbs', counts: 'engine_running', shows_h: 0 });
    const shows = (day: string, shows_h: number) => entry('reading', 'ac', day, { meter: 'hobbs', shows_h });
    const rows = (slip: readonly number[]) => [
      meter,
      shows('2017-01-01', 100),
      ...slip.map((h, i) => shows(`2018-12-0${i + 1}`, h)),
      ...[150, 200, 250].map((h, i) => shows(`202${i}-01-01`, h)),
    ];
    const limit = { first: { ...first, hours_h: 90 } };
    expect(worst(limit, rows([]), since).standing.worst).toBe('overdue');
    expect(worst(limit, rows([1000]), since).standing.worst).toBe('overdue');
    expect(worst(limit, rows([900, 1000]), since).standing.worst).toBe('overdue');
  });
  it('of many slips the one that raises what was flown is always held, however far off the others are', () => {
    const day = (n: number) =>
      `2018-${String(1 + Math.floor(n / 28)).padStart(2, '0')}-${String(1 + (n % 28)).padStart(2, '0')}`;
    const good = Array.from({ length: 40 }, (_, n) => read(day(4 * n), 400 + n));
    const low = Array.from({ length: 14 }, (_, n) => read(day(4 * n + 1), 14 - n));
    const limit = { first: { hours_h: 470, is: 'at', of: 'part', since: 'new' } } as const;
    // 460 h where the book goes on with 421 to 439 h: 478 h if it is right.
    const all = [...good, ...low, read(day(82), 460)];
    expect(worst(limit, [...good, ...low]).standing.worst).not.toBe('overdue');
    expect(worst(limit, all).standing.worst).toBe('overdue');
  });
  it('what is overdue stays so where the other record cannot be computed', () => {
    const m = model([...high, ['2020-06-01', 300] as const].map(([d, h]) => read(d, h)));
    const [a] = assessAll(
      [readDirective(rule({ first: { hours_h: 50, is: 'at', of: 'part', since: 'new' } }))],
      m,
      TODAY,
    );
    const end = {
      standing: 'due' as const,
      dueAt: { total_s: null, landings: null, day: null, now: true },
      left: null,
    };
    const bare = { ...end, counted: null, witness: [], proven: 'exact' as const };
    const not = { ...a!, treatAs: bare, couldBecome: bare, notComputed: 'treat as due, not computed' };
    expect(a!.standing.worst).toBe('overdue');
    const [held] = overDisputes([a!], m, () => [not]);
    expect(held).toMatchObject({ standing: { worst: 'overdue' }, notComputed: 'treat as due, not computed' });
  });
  it('a row whose hours and landings both cross is believed whole', () => {
    const rows = [
      entry('reading', 'ac', '2018-01-01', { total_h: 300, landings: 300 }),
      entry('reading', 'ac', '2019-01-01', { total_h: 800, landings: 800 }),
      entry('reading', 'ac', '2020-01-01', { total_h: 420, landings: 420 }),
      entry('reading', 'ac', '2021-01-01', { total_h: 500, landings: 500 }),
    ];
    const counts = { expression: 'hours.total + landings.total', called: 'figure', unit: 'count' } as const;
    const a = worst({ counts, first: { counted: 1700, is: 'at' } }, rows);
    // Believed whole: 880 h and 880 landings.
    expect(a.treatAs.left?.value).toBe(1700 - 1760);
    expect(a.standing.worst).toBe('overdue');
  });
});
