import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { TeardownDocument } from '../document.ts';
import { readTeardown } from '../map/index.ts';
import { replay } from '../order/index.ts';
import type { Need, StructureInput } from '../structure-document.ts';
import { job, minutes, part, rivets, screws } from '../testing/wing.ts';
import { planOf } from './plan-of.ts';

const from = { source: 'Made up for tests', known: 'invented' } as const;
/** Random wings: rows through two or three parts, needs only on what comes before in the list, so that all is reachable. */
const anyMap = (n: number): fc.Arbitrary<StructureInput> => {
  const raw = fc.record({
    time: fc.integer({ min: 1, max: 90 }),
    riveted: fc.boolean(),
    persons: fc.integer({ min: 1, max: 2 }),
    face: fc.constantFrom('upper' as const, 'lower' as const, 'either' as const),
    onto: fc.nat(),
    third: fc.option(fc.nat(), { nil: undefined }),
    needs: fc.array(fc.array(fc.nat(), { minLength: 1, maxLength: 3 }), { maxLength: 2 }),
    rowNeeds: fc.array(fc.array(fc.nat(), { minLength: 1, maxLength: 2 }), { maxLength: 1 }),
    spoil: fc.double({ min: 0, max: 0.2, noNaN: true }),
    look: fc.option(fc.record({ saves: fc.integer({ min: 1, max: 400 }), time: fc.integer({ min: 1, max: 60 }) }), {
      nil: undefined,
    }),
  });
  return fc.array(raw, { minLength: n, maxLength: n }).map((all) => {
    const need = (i: number, ways: readonly number[]): Need => {
      const names = [...new Set(ways.map((w) => `off:p${w % i}` as const))];
      return names.length === 1 ? names[0]! : { any: names };
    };
    const needs = (i: number, list: readonly (readonly number[])[]) => (i === 0 ? [] : list.map((w) => need(i, w)));
    return {
      sparwright: 'structure/1' as const,
      title: 'A random map (invented)',
      invented: true,
      from,
      parts: [
        part('body', 0, { stays: true }),
        ...all.map((x, i) => part(`p${i}`, x.time, { persons: x.persons, face: x.face, needs: needs(i, x.needs) })),
      ],
      joins: all.flatMap((x, i) => {
        const own = {
          persons: x.persons,
          face: x.face,
          spoil_chance: x.riveted ? x.spoil : 0,
          needs: needs(i, x.rowNeeds),
        };
        const row = x.riveted ? rivets : screws;
        const below = i === 0 || x.onto % 3 === 0 ? 'body' : `p${x.onto % i}`;
        const rows = [row(`r${i}`, [`p${i}`, below], 5 + (x.onto % 30), own)];
        return i > 1 && x.third !== undefined
          ? [...rows, row(`t${i}`, [`p${i}`, `p${x.third % i}`], 4, { face: x.face })]
          : rows;
      }),
      looks: all.flatMap((x, i) =>
        x.look
          ? [
              {
                id: `l${i}`,
                name: `l${i}`,
                at: `p${i}`,
                needs: [`off:p${i}` as const],
                minutes: minutes(x.look.time),
                chance: 0.5,
                now_cents: 0,
                later_cents: 2 * x.look.saves,
                from,
              },
            ]
          : [],
      ),
      each: {
        solid_rivet: {
          open: minutes(1),
          clip: minutes(0.3),
          drill: minutes(0.5),
          deburr: minutes(0.2),
          close: minutes(1.5),
        },
        screw: { open: minutes(0.4) },
      },
    };
  });
};
const read = (
  map: StructureInput,
  parts: readonly number[],
  work: 'repair' | 'replace' = 'repair',
  more: object = {},
): TeardownDocument =>
  readTeardown(job({ map, side: 'both', targets: [...new Set(parts)].map((p) => ({ part: `p${p}`, work })), ...more }));
const feasible = (document: TeardownDocument) => {
  try {
    return planOf(document);
  } catch (e) {
    expect(e).toMatchObject({ code: 'teardown.unreachable' });
    return null;
  }
};
const N = 9;
const targets = fc.array(fc.nat(N - 1), { minLength: 1, maxLength: 3 });

describe('T16 laws on random maps', () => {
  it('every plan replays without touching a row that is not reachable, and ends with everything fitted', () => {
    fc.assert(
      fc.property(anyMap(N), targets, fc.constantFrom('repair' as const, 'replace' as const), (map, wanted, work) => {
        const document = read(map, wanted, work);
        const plan = feasible(document);
        if (!plan) return;
        const states = replay(document.map, plan.operations);
        expect(states.at(-1)).toMatchObject({ off: [], open: [], clipped: [] });
        for (const t of wanted) expect(states.some((s) => s.off.includes(`p${t}`))).toBe(true);
        expect(new Set(plan.operations.map((o) => o.id)).size).toBe(plan.operations.length);
        expect(plan.least.bound_cents).toBeLessThanOrEqual(plan.least.cost_cents);
      }),
      { numRuns: 80 },
    );
  });
  it('any order that keeps what each step waits for replays as well: several hands may work at once', () => {
    fc.assert(
      fc.property(
        anyMap(N),
        targets,
        fc.constantFrom('repair' as const, 'replace' as const),
        fc.infiniteStream(fc.nat()),
        (map, wanted, work, picks) => {
          const document = read(map, wanted, work);
          const plan = feasible(document);
          if (!plan) return;
          const left = [...plan.operations];
          const order: typeof left = [];
          while (left.length > 0) {
            const waiting = new Set(left.map((o) => o.id));
            const free = left.filter((o) => !o.after.some((a) => waiting.has(a)));
            const next = free[picks.next().value! % free.length]!;
            order.push(...left.splice(left.indexOf(next), 1));
          }
          expect(replay(document.map, order).at(-1)).toMatchObject({ off: [], open: [], clipped: [] });
        },
      ),
      { numRuns: 120 },
    );
  });
  it('removing a target never raises the cost', () => {
    fc.assert(
      fc.property(anyMap(N), targets, fc.nat(N - 1), (map, wanted, further) => {
        const both = feasible(read(map, [...wanted, further]));
        if (!both) return;
        const less = planOf(read(map, wanted));
        expect(less.least.bound_cents).toBeLessThanOrEqual(both.least.cost_cents);
        if (less.least.proven) expect(less.least.cost_cents).toBeLessThanOrEqual(both.least.cost_cents);
      }),
      { numRuns: 60 },
    );
  });
  it('a dearer part never becomes more attractive', () => {
    fc.assert(
      fc.property(anyMap(N), targets, fc.nat(N - 1), fc.integer({ min: 1, max: 200 }), (map, wanted, dear, more) => {
        const before = feasible(read(map, wanted));
        if (!before?.least.proven) return;
        const parts = map.parts.map((p) =>
          p.id === `p${dear}` ? { ...p, take_off: minutes(p.take_off.likely_min + more) } : p,
        );
        const after = planOf(read({ ...map, parts }, wanted));
        const on = (p: typeof before) => p.least.steps.includes(`off:p${dear}`);
        expect(after.least.cost_cents).toBeGreaterThanOrEqual(before.least.cost_cents);
        if (!on(before)) expect(after.least.cost_cents).toBe(before.least.cost_cents);
        if (on(after) && !on(before)) throw new Error('dearer and chosen all the same');
      }),
      { numRuns: 60 },
    );
  });
  it('replanning after any beginning of the plan asks for nothing done, reaches the same and costs no more', () => {
    fc.assert(
      fc.property(anyMap(N), targets, fc.double({ min: 0, max: 1, noNaN: true }), (map, wanted, share) => {
        const plan = feasible(read(map, wanted));
        if (!plan) return;
        const ids = plan.operations.slice(0, Math.floor(share * plan.operations.length)).map((o) => o.id);
        const recorded = ids.map((id) =>
          id.startsWith('look:')
            ? { what: 'found', look: id.slice(5), finding: 'nothing', on: '2026-03-03', by: 'A. Mechanic' }
            : { what: 'done', operation: id, on: '2026-03-03', by: 'A. Mechanic' },
        );
        const document = read(map, wanted, 'repair', { recorded });
        const again = planOf(document);
        const left = again.operations.filter((o) => !o.done).map((o) => o.id);
        for (const id of ids) expect(left).not.toContain(id);
        expect(
          again.operations
            .filter((o) => o.done)
            .map((o) => o.id)
            .toSorted(),
        ).toEqual(ids.toSorted());
        expect(again.least.cost_cents).toBeLessThanOrEqual(plan.least.cost_cents);
        expect(replay(document.map, again.operations).at(-1)).toMatchObject({ off: [], open: [], clipped: [] });
      }),
      { numRuns: 60 },
    );
  });
  it('what is chosen by sums is worth its while together: the plan with them costs no more than without', () => {
    fc.assert(
      fc.property(anyMap(N), targets, (map, wanted) => {
        const plan = feasible(read(map, wanted));
        if (!plan) return;
        const chosen = plan.extras.filter((e) => e.chosen);
        const balance = chosen.reduce((s, e) => s + e.saves_cents - e.now_cents, 0);
        expect(balance).toBeGreaterThanOrEqual(-chosen.length);
        for (const e of plan.extras) if (!e.chosen) expect(e.saves_cents).toBeLessThanOrEqual(e.now_cents);
      }),
      { numRuns: 60 },
    );
  });
});
