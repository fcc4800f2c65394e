import { describe, expect, it } from 'vitest';
import { modelOf, readRecord } from '../record/index.ts';
import { type Assessment, assessAll, type DirectiveInput, partsAbsent, readDirective } from './index.ts';
import { entry, flownAs, rule, smallRecord } from './testing/rule.ts';

type Entry = Record<string, unknown> & { kind: string; subject: string };
const answers = (d: DirectiveInput, more: readonly object[] = [], change = (e: Entry): Entry => e): Assessment[] => {
  const r = smallRecord([flownAs('private'), ...more]) as { entries: Entry[] };
  const model = modelOf(readRecord({ ...r, entries: r.entries.map(change) }));
  return assessAll([readDirective(d)], model, model.day);
};
const of = (all: readonly Assessment[], subject: string, action = 'look') =>
  all.find((a) => a.subject === subject && a.action.id === action)!;
const hours = (hours_h: number, since: unknown, whose: 'part' | 'aircraft' = 'part') =>
  ({ hours_h, is: 'at', of: whose, since }) as never;
const reading = (subject: string, day: string, total_h: number) => entry('reading', subject, day, { total_h });

/** The spar flies 200 h on in the first aircraft, then 200 h in a second one that stood at 300 h of its own. */
const SWAPPED = [
  entry('aircraft', 'b', '2012-01-01', {
    registration: 'B',
    type: 'T',
    model: 'M',
    serial: '0200',
    built: '2012-01-01',
  }),
  entry('use', 'b', '2012-01-01', { from: '2012-01-01', use: 'private' }),
  reading('b', '2020-01-01', 100),
  reading('b', '2021-01-01', 300),
  reading('b', '2022-01-01', 500),
  reading('ac', '2020-06-01', 1100),
  reading('ac', '2021-01-01', 1200),
  entry('removal', 'sp', '2021-01-01', {}, { order: 20 }),
  entry('fitment', 'sp', '2021-01-01', { into: 'b', place: 'left_spar' }, { order: 21 }),
];
const EVENT = { event: 'hard_landing' };

describe('a part that went from one aircraft to another', () => {
  it('hours of the aircraft since a day are those of the aircraft that carries it now, at both ends', () => {
    const a = of(answers(rule({ first: hours(450, 'effective', 'aircraft') }), SWAPPED), 'sp');
    expect(a.treatAs.left!.value).toBe(50);
    expect(a.treatAs.dueAt.total_s).toBe(550 * 3600);
    expect(of(answers(rule({ first: hours(100, 'effective', 'aircraft') }), SWAPPED), 'sp').standing.worst).toBe(
      'overdue',
    );
  });
  it('its clock since it was first fitted does not begin again where it is fitted anew', () => {
    const since = (more: readonly object[]) =>
      of(answers(rule({ first: hours(5000, 'part_fitted') }), more), 'sp').treatAs.left!.value;
    expect(since([])).toBe(5000 - 1400);
    // 1 200 h in the first aircraft, 200 h in the second, none of it lost.
    expect(since(SWAPPED)).toBe(5000 - 1400);
    // Out and in again on one day: the same.
    const out = [
      entry('removal', 'sp', '2021-06-01', {}, { order: 1 }),
      entry('fitment', 'sp', '2021-06-01', { into: 'ac', place: 'left_spar' }, { order: 2 }),
    ];
    expect(since(out)).toBe(5000 - 1400);
  });
  it('brings what happened to it in the first aircraft', () => {
    const a = of(
      answers(rule({ first: hours(10, EVENT) }), [
        ...SWAPPED,
        entry('event', 'ac', '2020-06-01', EVENT, { order: 20 }),
      ]),
      'sp',
    );
    expect(a.standing.worst).toBe('overdue');
    expect(a.treatAs.left!.value).toBe(10 - 300);
  });
  it('and nothing of what the second had lived through before, or the first after', () => {
    const none = (subject: string, day: string) =>
      of(answers(rule({ first: hours(10, EVENT) }), [...SWAPPED, entry('event', subject, day, EVENT)]), 'sp').standing;
    expect(none('b', '2020-06-01').worst).toBe('not affected');
    expect(none('ac', '2021-06-01').worst).toBe('not affected');
  });
  it('a kit that the second aircraft had before counts from the day of the kit', () => {
    const kit = entry('kit', 'b', '2020-01-01', { kit: 'strap', action: 'fitted' }, { order: 20 });
    const d = rule({ first: hours(500, { kit_fitted: 'strap' }, 'aircraft') });
    expect(of(answers(d, [...SWAPPED, kit]), 'sp').treatAs.left!.value).toBe(100);
  });
});

describe('a spar in a wing in an aircraft', () => {
  const inWing = (e: Entry): Entry =>
    e.kind === 'fitment' && e.subject === 'sp' ? { ...e, body: { into: 'w', place: 'left_spar' } } : e;
  const wing = [
    entry('part', 'w', '2010-01-01', { part: 'wing', hand: 'left' }),
    entry('fitment', 'w', '2010-01-01', { into: 'ac', place: 'left_wing' }),
    reading('ac', '2020-06-01', 1100),
  ];
  const kit = entry('kit', 'w', '2020-06-01', { kit: 'strap', action: 'fitted' }, { order: 20 });
  it('has what happened to the wing', () => {
    const event = entry('event', 'w', '2020-06-01', EVENT, { order: 20 });
    expect(of(answers(rule({ first: hours(400, EVENT) }), [...wing, event], inWing), 'sp').treatAs.left!.value).toBe(
      100,
    );
  });
  it('has the kit of the wing: for its group, and as the start of a clock', () => {
    const group = rule({ affects: { with_kits: ['strap'] }, first: hours(10, 'new') });
    expect(of(answers(group, [...wing, kit], inWing), 'sp').standing.worst).toBe('overdue');
    expect(of(answers(group, wing, inWing), 'sp').standing.worst).toBe('not affected');
    const clock = rule({ first: hours(400, { kit_fitted: 'strap' }) });
    expect(of(answers(clock, [...wing, kit], inWing), 'sp').treatAs.left!.value).toBe(100);
  });
});

describe('what a finding starts', () => {
  const linked = (over: object = {}): DirectiveInput => {
    const r = rule({ first: hours(5000, 'new') });
    const mend = {
      id: 'mend',
      title: 'Mend',
      does: 'replace' as const,
      looks_at: 'spar',
      started_by: [{ action: 'look', finding: 'crack' }],
      first: { before_further_flight: true as const },
      missing_papers: 'bounds' as const,
      ...over,
    };
    const held = {
      name: 'm',
      action: 'mend',
      day: '2020-01-02',
      facts: {},
      expect: { standing: 'not affected' as const },
    };
    return { ...r, actions: [...r.actions, mend], cases: [...r.cases, held] };
  };
  const done = (subject: string, day: string, action: string, finding: string, order = 0) =>
    entry('accomplished', subject, day, { directive: 'T-1', issue: 1, action, finding }, { order });
  const mended = (more: readonly object[], subject = 'sp', over: object = {}) =>
    of(answers(linked(over), more), subject, 'mend').standing.worst;
  const before = [done('sp', '2020-03-01', 'look', 'crack'), done('sp', '2020-03-02', 'mend', 'none')];

  it('mended after the finding: ended', () => expect(mended(before)).toBe('ended'));
  it('found again after it was mended: the old work does not count', () =>
    expect(mended([...before, done('sp', '2021-06-01', 'look', 'crack')])).toBe('overdue'));
  it('found again on the same day, later in the order of the day', () => {
    const day = ['look', 'mend', 'look'].map((a, n) => done('sp', '2022-01-01', a, a === 'look' ? 'crack' : 'none', n));
    expect(mended(day)).toBe('due');
    expect(mended(day.slice(0, 2))).toBe('ended');
  });
  it('found again where the work repeats: before further flight, not at the next repeat', () => {
    const repeat = hours(1000, { last_look: [{ directive: 'T-1', action: 'mend' }] });
    expect(mended(before, 'sp', { repeat })).toBe('done and repeating');
    expect(mended([...before, done('sp', '2021-06-01', 'look', 'crack')], 'sp', { repeat })).toBe('overdue');
  });
  it('what ended it before the finding does not end it after', () => {
    const ended_by = [{ action: 'look', finding: 'sound' }];
    const sound = done('sp', '2020-03-01', 'look', 'sound');
    const crack = done('sp', '2022-01-01', 'look', 'crack', 9);
    expect(mended([sound, crack], 'sp', { ended_by })).toBe('due');
    expect(mended([sound, crack, done('sp', '2022-01-01', 'look', 'sound', 10)], 'sp', { ended_by })).toBe('ended');
  });
  it('written down on the aircraft, it concerns every such part of it', () =>
    expect(mended([done('ac', '2022-01-01', 'look', 'crack', 9)])).toBe('due'));
  it('found in a part, it starts an action on the aircraft', () =>
    expect(mended([done('sp', '2022-01-01', 'look', 'crack', 9)], 'ac', { looks_at: 'aircraft' })).toBe('due'));
  it('of another part it starts nothing: not of the other side, not of a part of the same kind', () => {
    const right = [
      entry('part', 'sr', '2010-01-01', { part: 'spar', hand: 'right' }),
      entry('fitment', 'sr', '2010-01-01', { into: 'ac', place: 'right_spar' }),
      done('sr', '2022-01-01', 'look', 'crack', 9),
    ];
    expect(mended(right)).toBe('not affected');
    expect(mended(right, 'sr')).toBe('due');
  });
});

describe('a name or serial that only reads otherwise is treated as affected', () => {
  const standing = (affects: DirectiveInput['affects']) =>
    of(answers(rule({ affects, first: hours(10, 'new') })), 'sp').standing;
  it.each([
    ['model', { models: [{ model: 'm' }] }],
    ['part number', { part_numbers: ['p1'] }],
    ['excluded part number', { not_part_numbers: ['p 1'] }],
    ['letters before one serial only', { models: [{ model: 'M', serials: [{ from: 'SN 0050', to: 'SN 0150' }] }] }],
    ['the same, one by one', { models: [{ model: 'M', serials: [{ only: ['SN 100'] }] }] }],
  ])('%s', (_, affects) => expect(standing(affects)).toEqual({ worst: 'overdue', best: 'not affected' }));
  it.each([
    ['another model', { models: [{ model: 'N' }] }],
    ['another part number', { part_numbers: ['P-2'] }],
    ['the excluded part number itself', { not_part_numbers: ['P-1'] }],
    ['a serial outside', { models: [{ model: 'M', serials: [{ from: 'SN 0150', to: 'SN 0250' }] }] }],
  ])('%s: not affected', (_, affects) => expect(standing(affects).worst).toBe('not affected'));
});

describe('a part that nobody wrote down', () => {
  const absent = (d: DirectiveInput, more: readonly object[] = []) => {
    const model = modelOf(readRecord(smallRecord(more)));
    return partsAbsent([readDirective(d)], model, 'ac', model.day);
  };
  const strut = (over: Partial<DirectiveInput> = {}) => rule({ looks_at: 'strut', first: hours(10, 'new') }, over);
  it('is named, with the directive that looks at it', () =>
    expect(absent(strut())).toEqual([{ directive: 'T-1', what: 'strut' }]));
  it('is not named where it is fitted, or where the rule surely affects another aircraft', () => {
    const fitted = [
      entry('part', 'st', '2010-01-01', { part: 'strut', hand: 'left' }),
      entry('fitment', 'st', '2010-01-01', { into: 'ac', place: 'left_strut' }),
    ];
    expect(absent(strut(), fitted)).toEqual([]);
    expect(absent(strut({ affects: { models: [{ model: 'N' }] } }))).toEqual([]);
    expect(absent(strut({ effective: '2023-01-01' }))).toEqual([]);
    expect(absent(strut({ affects: { models: [{ model: 'M' }] } }))).toHaveLength(1);
  });
});
