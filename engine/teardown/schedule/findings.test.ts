import { describe, expect, it } from 'vitest';
import type { Day } from '../../foundation/day.ts';
import { isRefusal } from '../../foundation/refusal.ts';
import type { Operation } from '../model.ts';
import type { JobToDo, ScheduleQuestion } from './ask.ts';
import { scheduleOf } from './schedule.ts';
import { checkSchedule } from './testing/check.ts';
import { floorOf, operationOf } from './testing/random-floor.ts';

/** A Monday. The floor of these tests: 08:00 to 16:00, half an hour's break at noon, Monday to Friday. */
const MONDAY = '2026-11-30' as Day;
const day = (n: number) => `2026-12-${String(n).padStart(2, '0')}` as Day;
const job = (name: string, operations: Operation[], more: Partial<JobToDo> = {}): JobToDo => ({
  name,
  operations,
  ...more,
});
function ask(over: Parameters<typeof floorOf>[0], jobs: JobToDo[], more: Partial<ScheduleQuestion> = {}) {
  const question = { floor: floorOf(over), jobs, others: [], day: MONDAY, seed: 1, ...more };
  const made = scheduleOf(question);
  expect(checkSchedule(question, made)).toEqual([]);
  const at = (id: string, of = jobs[0]!.name) => made.operations.find((o) => o.id === id && o.job === of)!;
  return { made, at, said: (code: string) => made.findings.filter((f) => f.code === code).map((f) => f.text) };
}
const crew = (...names: string[]) => names.map((name) => ({ name, skills: ['metal'] }));
const jig = (id: string, more: object = {}) => ({ id, name: id, kind: 'wing-jig', hand: 'left' as const, ...more });
const inJig = (id: string, minutes: number, more: Partial<Operation> = {}) =>
  operationOf(id, minutes, { jig: 'wing-jig', stage: 'wet', ...more });

describe('jigs', () => {
  it('booked out: the work waits, and the first free day is named', () => {
    const booked = [{ from: MONDAY, to: day(2), because: 'the other wing' }];
    const { at, said } = ask({ jigs: [jig('jig-1', { booked })] }, [job('A', [inJig('job:a', 60)], { side: 'left' })]);
    expect(at('job:a').startDay).toBe('2026-12-03');
    expect(said('jig-booked')).toEqual([
      'jig-1 is taken until 2026-12-02 (the other wing); its first free day is 2026-12-03. A waits for it.',
    ]);
  });
  it('the first free day is free of what books it next, and other work counts', () => {
    const booked = [
      { from: MONDAY, to: day(1) },
      { from: day(2), to: day(3) },
    ];
    const others = [{ name: 'Another wing', jig: 'jig-1', from: day(4), to: day(4) }];
    const { at, said } = ask({ jigs: [jig('jig-1', { booked })] }, [job('A', [inJig('job:a', 60)])], { others });
    expect(at('job:a').startDay).toBe('2026-12-07');
    expect(said('jig-booked').join()).toMatch(/taken until 2026-12-04 .*Another wing.*first free day is 2026-12-05/);
  });
  it('a stay that would run into booked days begins after them', () => {
    const booked = [{ from: day(2), to: day(2) }];
    const { at } = ask({ jigs: [jig('jig-1', { booked })] }, [
      job('A', [
        inJig('job:a', 450),
        inJig('cure:b', 1440, { unattended: true, after: ['job:a'] }),
        inJig('job:c', 5, { after: ['cure:b'] }),
      ]),
    ]);
    expect(at('job:a').startDay).toBe('2026-12-03');
  });
  it('held from the first to the last operation, the night and what is done beside it included', () => {
    const two = [
      inJig('job:a', 60),
      operationOf('job:b', 400, { stage: 'wet', after: ['job:a'] }),
      inJig('job:c', 60, { after: ['job:b'] }),
    ];
    const { made, at, said } = ask({ crew: crew('Ash', 'Bo'), jigs: [jig('jig-1')] }, [
      job('A', two),
      job('B', [inJig('job:x', 30)]),
    ]);
    const [first, second] = [at('job:x', 'B'), at('job:a')];
    expect(second.start_min).toBeGreaterThanOrEqual(first.end_min);
    expect(made.jigDays.map((d) => [d.from, d.to, d.days])).toEqual([
      [MONDAY, MONDAY, 1],
      [MONDAY, '2026-12-01', 2],
    ]);
    expect(said('job-waits')).toEqual(['A waits for jig-1, which B holds until 2026-11-30.']);
  });
  it('leaves it in a stage that has work and none in the jig', () => {
    const stages = [
      inJig('job:dry', 60, { stage: 'dry' }),
      operationOf('job:apart', 900, { stage: 'apart', after: ['job:dry'] }),
      inJig('job:wet', 60, { after: ['job:apart'] }),
    ];
    const { made } = ask({ jigs: [jig('jig-1')] }, [job('A', stages)]);
    expect(made.jigDays.map((d) => [d.from, d.days])).toEqual([
      [MONDAY, 1],
      ['2026-12-02', 1],
    ]);
  });
  it('past its check: another is taken; where none is left it is not used, and the finding says so', () => {
    const old = jig('jig-old', { check_good_until: '2026-11-29' });
    const work = [job('A', [inJig('job:a', 60)], { side: 'left' })];
    const other = ask({ jigs: [old, jig('jig-new', { hand: 'both', check_good_until: day(31) })] }, work);
    expect(other.at('job:a').jig).toBe('jig-new');
    const none = ask({ jigs: [old] }, work);
    expect(none.at('job:a').jig).toBeNull();
    expect(none.made.jigDays).toEqual([]);
    expect(none.said('jig-past-check')[0]).toMatch(/jig-old \(good until 2026-11-29\).*None is used/);
  });
  it('a finding says a jig by its name, of two by one name with the id; it is about the id', () => {
    const past = { check_good_until: '2026-11-29' };
    const old = jig('jig-old', { name: 'Wing jig 0', ...past });
    const work = [job('A', [inJig('job:a', 60)], { side: 'left' })];
    const none = ask({ jigs: [old] }, work);
    expect(none.said('jig-past-check')[0]).toMatch(/: Wing jig 0 \(good until 2026-11-29\)\./);
    expect(none.made.findings[0]!.about).toEqual(['jig-old', 'job:a']);
    const other = ask({ jigs: [old, jig('jig-new', { name: 'Wing jig 1' })] }, work);
    expect(other.said('jig-past-check')).toEqual([
      'The check of Wing jig 0 is good until 2026-11-29; the stay of A ends on 2026-11-30. It is not used for it.',
    ]);
    const booked = [{ from: MONDAY, to: MONDAY }];
    const taken = ask({ jigs: [jig('jig-1', { name: 'Wing jig 1', booked })] }, work);
    expect(taken.said('jig-booked')[0]).toMatch(/^Wing jig 1 is taken until/);
    const two = ask({ jigs: [jig('jig-1', { name: 'Wing jig 1' })], crew: crew('Ash', 'Bo') }, [
      ...work,
      job('B', [inJig('job:x', 30)]),
    ]);
    expect(two.said('job-waits').join()).toMatch(/waits for Wing jig 1, which/);
    const same = ask({ jigs: [old, jig('jig-older', { name: 'Wing jig 0', ...past })] }, work);
    expect(same.said('jig-past-check').join()).toMatch(/: Wing jig 0 \(jig-old\) \(.*, Wing jig 0 \(jig-older\) \(/);
  });
  it('a check that runs out within the stay keeps the jig out of it', () => {
    const long = [inJig('job:a', 450), inJig('job:b', 450, { after: ['job:a'] })];
    const { at } = ask(
      { jigs: [jig('jig-1', { check_good_until: MONDAY }), jig('jig-2', { booked: [{ from: MONDAY, to: MONDAY }] })] },
      [job('A', long)],
    );
    expect([at('job:a').jig, at('job:a').startDay]).toEqual(['jig-2', '2026-12-01']);
  });
  it('both wings at once: each stands in a jig of its own hand, what belongs to no one wing goes with the first', () => {
    const left = (id: string, more: Partial<Operation> = {}) => inJig(id, 120, { hand: 'left', ...more });
    const right = (id: string, more: Partial<Operation> = {}) => inJig(id, 120, { hand: 'right', ...more });
    const old = jig('jig-old', { hand: 'both', check_good_until: '2026-11-29' });
    const jigs = [jig('jig-l'), jig('jig-r', { hand: 'right' }), old];
    const work = [left('job:l'), right('job:r'), inJig('job:any', 60, { hand: 'both' })];
    const { made, at } = ask({ jigs, crew: crew('A', 'B') }, [job('A', work, { side: 'both' })]);
    expect(['job:l', 'job:r', 'job:any'].map((id) => at(id).jig)).toEqual(['jig-l', 'jig-r', 'jig-l']);
    expect(made.jigDays.map((d) => d.jig).sort()).toEqual(['jig-l', 'jig-r']);
    const one = ask({ jigs: [jig('jig-l')] }, [job('A', work, { side: 'both' })]);
    expect(one.said('no-jig').join()).toMatch(/for the right hand/);
    const texts = made.findings.map((f) => `${f.code} ${f.text}`);
    expect(new Set(texts).size).toBe(texts.length);
  });
  it('the other hand is no help', () => {
    const { at, said } = ask({ jigs: [jig('jig-1', { hand: 'right' })] }, [
      job('A', [inJig('job:a', 60)], { side: 'left' }),
    ]);
    expect(at('job:a').jig).toBeNull();
    expect(said('no-jig')).toHaveLength(1);
  });
  it('a job that stands in the jig holds it from the first minute', () => {
    const begun = [inJig('job:a', 60, { done: true }), inJig('job:b', 60, { after: ['job:a'] })];
    const { at } = ask({ crew: crew('Ash', 'Bo'), jigs: [jig('jig-1')] }, [
      job('B', [inJig('job:x', 30)]),
      job('A', begun),
    ]);
    expect(at('job:b', 'A').start_min).toBe(480);
    expect(at('job:x', 'B').start_min).toBe(540);
  });
});

describe('working lives', () => {
  const chain = (most: number) => [
    operationOf('job:before', 390, { may_pause: false }),
    operationOf('seal:j', 30, { after: ['job:before'], may_pause: false }),
    operationOf('close:j', 60, { after: ['seal:j'], within: { of: 'seal:j', min: most }, may_pause: false }),
  ];
  /** 390 min end at 15:00 over the break. Seal 15:00 to 15:30, close would need until 16:30: both go to the next morning. */
  it('what must follow within the life of a sealant is not left overnight', () => {
    const { made, at } = ask({}, [job('A', chain(90))]);
    expect([at('seal:j').start_min, at('close:j').start_min]).toEqual([1440 + 480, 1440 + 510]);
    expect(made.chain).toEqual(['job:before', 'seal:j', 'close:j']);
    expect(made.findings).toEqual([]);
  });
  it('a life that holds overnight may', () => {
    const { at } = ask({}, [job('A', chain(1100))]);
    expect([at('seal:j').start_min, at('close:j').start_min]).toEqual([15 * 60, 1440 + 480]);
  });
  it('one that no plan can keep is named', () => {
    const { said } = ask({}, [job('A', chain(20))]);
    expect(said('life-too-short').join()).toMatch(/within 20 min .* takes 30 min/);
  });
});

describe('crew', () => {
  it('nobody with the skill is refused, by skill and operation', () => {
    let refused: unknown;
    try {
      ask({}, [job('A', [operationOf('look:spar', 30, { skill: 'ndt', title: 'Look at the spar' })])]);
    } catch (e) {
      refused = e;
    }
    expect(isRefusal(refused) && [refused.code, refused.detail.given]).toEqual([
      'teardown.nobody-can',
      '"Look at the spar" (look:spar, A) asks for the skill ndt; nobody on the crew holds it',
    ]);
  });
  it('nobody there within ten years is refused', () => {
    const off = [{ from: MONDAY, to: '2040-01-01' as Day }];
    expect(() =>
      ask({ crew: [{ name: 'Ash', skills: ['metal'], off }] }, [job('A', [operationOf('job:a', 5)])]),
    ).toThrow(/within ten years/);
  });
  it('too few hold the skill: others help; the crew is too small: hands from outside', () => {
    const pair = operationOf('job:a', 60, { persons: 2, skill: 'ndt' });
    const some = ask({ crew: [...crew('Ash'), { name: 'Bo', skills: ['ndt'] }] }, [job('A', [pair])]);
    expect(some.at('job:a').crew.toSorted()).toEqual(['Ash', 'Bo']);
    expect(some.said('crew-too-small').join()).toMatch(/1 of the crew hold the skill ndt.*helping/);
    const none = ask({ crew: [{ name: 'Bo', skills: ['ndt'] }] }, [job('A', [pair])]);
    expect(none.at('job:a').crew).toEqual(['Bo']);
    expect(none.said('crew-too-small').join()).toMatch(/came from outside/);
  });
  it('a duplicate inspection is done by somebody else, through drying; one person alone cannot', () => {
    const work = [
      operationOf('job:a', 60),
      operationOf('cure:a', 60, { unattended: true, after: ['job:a'] }),
      operationOf('look:a', 30, { after: ['cure:a'], duplicate: true }),
    ];
    const { at, made } = ask({ crew: crew('Ash', 'Bo') }, [job('A', work)]);
    expect(at('look:a').crew).not.toEqual(at('job:a').crew);
    expect(made.findings).toEqual([]);
    expect(
      ask({}, [job('A', work)])
        .said('no-second-person')
        .join(),
    ).toMatch(/Ash cannot be spared/);
  });
  it('who is recorded to have done the work does not inspect it, through drying; where nobody else can, it is said', () => {
    const work = (by: string) => [
      operationOf('job:a', 60, { done: true, by }),
      operationOf('cure:a', 60, { unattended: true, after: ['job:a'] }),
      operationOf('look:a', 30, { after: ['cure:a'], duplicate: true }),
    ];
    for (const [by, other] of [
      ['Ash', 'Bo'],
      ['Bo', 'Ash'],
    ] as const) {
      const { at, made } = ask({ crew: crew('Ash', 'Bo') }, [job('A', work(by))]);
      expect(at('look:a').crew).toEqual([other]);
      expect(made.findings).toEqual([]);
    }
    expect(ask({ crew: crew('Ash', 'Bo') }, [job('A', work('A visitor'))]).made.findings).toEqual([]);
    expect(
      ask({}, [job('A', work('Ash'))])
        .said('no-second-person')
        .join(),
    ).toMatch(/Ash cannot be spared/);
  });
  it('the same persons stay to the end, over the night and over days off', () => {
    const people = [
      { name: 'Ash', skills: ['metal'], off: [{ from: day(1), to: day(1) }] },
      { name: 'Bo', skills: ['metal'] },
    ];
    const { at } = ask({ crew: people }, [job('A', [operationOf('job:a', 500, { persons: 2 })])]);
    expect([at('job:a').startDay, at('job:a').end_min]).toEqual([MONDAY, 2 * 1440 + 480 + 50]);
  });
  it('longer than any shift and not to be left: planned over night, and said', () => {
    const { at, said } = ask({}, [job('A', [operationOf('job:a', 455, { may_pause: false })])]);
    expect(at('job:a').end_min).toBe(1440 + 485);
    expect(said('longer-than-a-shift').join()).toMatch(/takes 455 min; the longest shift has 450/);
  });
  it('the installer and drying take no hands, day and night', () => {
    const { at } = ask({}, [
      job('A', [
        operationOf('gate:i', 600, { who: 'installer' }),
        operationOf('cure:c', 1000, { unattended: true, after: ['gate:i'] }),
        operationOf('job:z', 10, { after: ['cure:c'] }),
      ]),
    ]);
    expect([at('gate:i').start_min, at('cure:c').end_min, at('job:z').start_min]).toEqual([0, 1600, 1440 + 480]);
  });
});

it('a need that is not on the plan is said, and passed over', () => {
  const { at, said } = ask({}, [job('A', [operationOf('job:a', 10, { after: ['job:gone'] })])]);
  expect(at('job:a').start_min).toBe(480);
  expect(said('need-unknown').join()).toMatch(/job:gone/);
});

it('nothing to do ends at once', () => {
  const { made } = ask({}, [job('A', [])], { chance: { seed: 1, runs: 100, common: 0.1 } });
  expect([made.end_min, made.bound_min, made.chain, made.finish?.p80]).toEqual([0, 0, [], MONDAY]);
});
