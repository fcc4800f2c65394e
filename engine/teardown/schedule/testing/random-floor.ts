import { addDays, type Day } from '../../../foundation/day.ts';
import { randomSource } from '../../../foundation/random.ts';
import type { FloorInput } from '../../floor-document.ts';
import { zFloor } from '../../floor-document.ts';
import type { Operation } from '../../model.ts';
import { STAGES } from '../../structure-document.ts';
import type { ScheduleQuestion } from '../ask.ts';

const FIRST = '2026-11-30' as Day;
const madeUp = { source: 'Made up for this test', known: 'invented' } as const;

export const floorOf = (over: Partial<FloorInput> = {}) =>
  zFloor.parse({
    sparwright: 'floor/1',
    title: 'Floor of a test',
    currency: 'crowns',
    crew: [{ name: 'Ash', skills: ['metal'] }],
    shifts: [{ weekdays: [1, 2, 3, 4, 5], from: '08:00', to: '16:00', break: { from: '12:00', to: '12:30' } }],
    hour_cents: 100,
    jig_day_cents: 100,
    from: madeUp,
    ...over,
  });

/** An operation as small as can be; minutes are sure. */
export const operationOf = (id: string, minutes: number, over: Partial<Operation> = {}): Operation => ({
  id,
  kind: 'job',
  of: id,
  stage: 'take_down',
  title: `Do ${id}`,
  minutes: { low_min: minutes, likely_min: minutes, high_min: minutes },
  persons: 1,
  skill: null,
  unattended: false,
  tools: [],
  face: 'either',
  who: 'shop',
  jig: null,
  after: [],
  within: null,
  may_pause: true,
  duplicate: false,
  cents: 0,
  done: false,
  exposes: [],
  because: null,
  from: null,
  ...over,
});

/** A floor and jobs on it, all kinds of trouble among them; every skill is held by somebody. */
export function randomQuestion(seed: number, operations: number, jobs: number): ScheduleQuestion {
  const random = randomSource(seed, 77);
  const below = (n: number) => Math.floor(random.next() * n);
  const chance = (p: number) => random.next() < p;
  const skills = ['metal', 'jig', 'fuel'];
  const span = (within: number, long: number) => {
    const from = below(within);
    return { from: addDays(FIRST, from), to: addDays(FIRST, from + below(long)) };
  };
  const crew = Array.from({ length: 2 + below(4) }, (_, p) => ({
    name: `P${p}`,
    skills: p === 0 ? skills : skills.filter((_, k) => k === p % 3 || chance(0.4)),
    off: Array.from({ length: below(4) }, () => span(20, 4)),
  }));
  const jigs = Array.from({ length: below(4) }, (_, j) => ({
    id: `jig-${j}`,
    name: `Jig ${j}`,
    kind: j === 2 ? 'cradle' : 'wing-jig',
    hand: (['left', 'right', 'both'] as const)[below(3)]!,
    ...(chance(0.3) ? { check_good_until: addDays(FIRST, below(40)) } : {}),
    booked: Array.from({ length: below(3) }, () => span(30, 6)),
  }));
  const floor = floorOf({
    crew,
    jigs,
    shifts: chance(0.3)
      ? [
          { weekdays: [1, 2, 3, 4, 5], from: '06:00', to: '13:00', break: { from: '09:00', to: '09:20' } },
          { weekdays: [1, 3, 5, 6], from: '13:00', to: '20:00' },
          { weekdays: [2], from: '15:00', to: '18:00' },
        ]
      : [
          { weekdays: [1, 2, 3, 4], from: '07:30', to: '16:30', break: { from: '12:00', to: '12:45' } },
          { weekdays: [5], from: '07:30', to: '13:30' },
        ],
    closed: Array.from({ length: below(3) }, () => span(25, 3)),
  });
  const job = (j: number) => {
    const list: Operation[] = [];
    let stage = 0;
    for (let i = 0; i < operations; i++) {
      if (chance(7 / operations)) stage = Math.min(STAGES.length - 1, stage + 1);
      const after = list.filter(() => chance(2.5 / Math.max(2, i))).map((o) => o.id);
      const low = below(120);
      const minutes = { low_min: low, likely_min: low + below(60), high_min: low + 60 + below(200) };
      const likes = list.length > 0 && chance(0.08) ? list[list.length - 1]! : null;
      if (likes && !after.includes(likes.id)) after.push(likes.id);
      const unattended = chance(0.1);
      const dear = below(3);
      list.push(
        operationOf(`job:o${i}`, 0, {
          stage: STAGES[stage]!,
          minutes: chance(0.05) ? { low_min: 0, likely_min: 0, high_min: 0 } : minutes,
          persons: 1 + (chance(0.3) ? 1 : 0),
          skill: chance(0.5) ? skills[dear]! : null,
          unattended,
          who: chance(0.05) ? 'installer' : 'shop',
          jig: jigs.length > 0 && chance(0.2) ? (chance(0.8) ? 'wing-jig' : 'cradle') : null,
          after,
          within: likes ? { of: likes.id, min: 60 + below(400) } : null,
          may_pause: chance(0.6),
          duplicate: chance(0.04),
        }),
      );
    }
    return {
      name: `Job ${j}`,
      operations: list,
      ...(chance(0.3) ? { ready: addDays(FIRST, below(6)) } : {}),
      side: (['left', 'right', 'both'] as const)[below(3)]!,
    };
  };
  return {
    floor,
    jobs: Array.from({ length: jobs }, (_, j) => job(j)),
    others: jigs.length > 0 && chance(0.4) ? [{ name: 'Another wing', jig: jigs[0]!.id, ...span(30, 8) }] : [],
    day: FIRST,
    seed,
  };
}
