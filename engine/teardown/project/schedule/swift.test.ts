import fc from 'fast-check';
import { expect, it } from 'vitest';
import { drawFrom } from '../lists/draw.ts';
import { variation } from '../lists/vary.ts';
import { projects } from '../testing/projects.ts';
import { faultsOf } from './faults.ts';
import { doubleJustified } from './justify.ts';
import { makespanOf } from './room.ts';
import { serialSchedule } from './serial.ts';
import { swiftDecoder } from './swift.ts';

const cases = fc.tuple(projects(16, 7), fc.integer({ min: 0, max: 1000 }), fc.boolean());

it('S6 the hot form is the readable form, list by list, over and over', () =>
  fc.assert(
    fc.property(cases, ([project, seed, wide]) => {
      // Two words where the capacities do not fit into one.
      const p = wide
        ? {
            ...project,
            capacities: project.capacities.map((c) => c * 30_000),
            demands: project.demands.map((d) => d * 30_000),
          }
        : project;
      const swift = swiftDecoder(p);
      const vary = variation(p.count, p.predecessors, null, drawFrom(seed, 1));
      const list = new Int32Array(p.count);
      for (let i = 0; i < 4; i++) {
        vary.sample(list);
        const starts = serialSchedule(p, list);
        expect(swift.serial(list)).toBe(makespanOf(p, starts));
        expect([...swift.starts]).toEqual([...starts]);
        const twice = doubleJustified(p, starts, list);
        expect(faultsOf(p, twice.starts)).toEqual([]);
        expect(makespanOf(p, twice.starts)).toBeLessThanOrEqual(makespanOf(p, starts));
        const copy = list.slice();
        expect(swift.decode(copy)).toBe(makespanOf(p, twice.starts));
        expect([...swift.starts]).toEqual([...twice.starts]);
        expect([...copy]).toEqual([...twice.list]);
        // What comes back is a list of the same schedule.
        expect([...serialSchedule(p, copy)]).toEqual([...twice.starts]);
      }
    }),
    { numRuns: 150 },
  ));

it('S7 children and moves keep the precedence, every job once', () =>
  fc.assert(
    fc.property(cases, ([project, seed]) => {
      const vary = variation(project.count, project.predecessors, project.durations, drawFrom(seed, 2));
      const [a, b, c] = [0, 0, 0].map(() => new Int32Array(project.count)) as [Int32Array, Int32Array, Int32Array];
      vary.sample(a);
      vary.sample(b);
      vary.cross(a, b, c);
      vary.mutate(c, 0.5);
      for (const list of [a, b, c]) {
        const place = Array.from({ length: project.count }, (_, j) => list.indexOf(j));
        expect(place).not.toContain(-1);
        project.predecessors.forEach((before, j) => {
          for (const p of before) expect(place[p]).toBeLessThan(place[j]!);
        });
      }
    }),
  ));
