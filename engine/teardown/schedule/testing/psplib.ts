import { existsSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { Day } from '../../../foundation/day.ts';
import { type Project, readSm } from '../../project/index.ts';
import type { ScheduleQuestion } from '../ask.ts';
import { floorOf, operationOf } from './random-floor.ts';

const FOLDER = new URL('../../../../../shared/data/psplib/', import.meta.url);
const text = (name: string): string | null => {
  const path = fileURLToPath(new URL(name, FOLDER));
  return existsSync(path) ? readFileSync(path, 'utf8') : null;
};
export const projectNamed = (name: string): Project | null => {
  const sm = text(`${name.slice(0, 3)}/${name}.sm`);
  return sm === null ? null : readSm(sm);
};
/** Listed least makespans, by instance. */
export function listed(set: string): Map<string, number> {
  const csv = text(`${set}/optimum.csv`) ?? '';
  const rows = csv.split(/\r?\n/).map((line) => line.split(','));
  return new Map(rows.filter((r) => /^\d+$/.test(r[1] ?? '')).map((r) => [r[0]!, Number(r[1])]));
}

/** One unit of a project is five minutes of the floor: its least step. */
export const UNIT_MIN = 5;
/**
 * A project whose jobs take of one resource each, as work of a floor: a person for each unit of a resource, who has its
 * name as only skill; open from midnight to a minute before midnight. Null where a job takes of several.
 */
export function asFloor(project: Project): ScheduleQuestion | null {
  const kinds = project.capacities.length;
  const operations = Array.from(project.durations, (d, j) => {
    const taken = Array.from({ length: kinds }, (_, k) => project.demands[j * kinds + k]!);
    const k = taken.findIndex((t) => t > 0);
    return {
      several: taken.filter((t) => t > 0).length > 1,
      operation: operationOf(`job:${j}`, d * UNIT_MIN, {
        ...(k < 0 ? { unattended: true, persons: 0 } : { skill: `kind-${k}`, persons: taken[k]! }),
        after: Array.from(project.predecessors[j]!, (p) => `job:${p}`),
      }),
    };
  });
  if (operations.some((o) => o.several)) return null;
  return {
    floor: floorOf({
      crew: Array.from(project.capacities).flatMap((c, k) =>
        Array.from({ length: c }, (_, n) => ({ name: `K${k} ${n}`, skills: [`kind-${k}`] })),
      ),
      shifts: [{ weekdays: [1, 2, 3, 4, 5, 6, 7], from: '00:00', to: '23:59' }],
    }),
    jobs: [{ name: 'project', operations: operations.map((o) => o.operation) }],
    others: [],
    day: '2026-11-30' as Day,
    seed: 1,
  };
}
