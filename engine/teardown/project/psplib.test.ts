import { describe, expect, it } from 'vitest';
import {
  criticalPath,
  faultsOf,
  leastMakespan,
  listBy,
  lowerBounds,
  makespanOf,
  priorities,
  readRcp,
  readSm,
  serialSchedule,
} from './index.ts';
import { shared } from './testing/shared.ts';

/**
 * Published optima: Kolisch and Sprecher, EJOR 96 (1997) 205-216, and the Patterson set. The projects themselves lie
 * beside the repository, or the check is not run.
 */
describe.each([
  // RS-01, RS-02, RS-03, RS-05, RS-09; lft: serial schedule by latest finish, ties by number (RS-06, derived, not published).
  { file: 'j30/j301_1.sm', optimum: 43, path: 38, work: 25, lft: 49 },
  { file: 'j30/j301_2.sm', optimum: 47, path: 42, work: 26, lft: 51 },
  { file: 'j30/j303_4.sm', optimum: 98, path: 98 },
  { file: 'j30/j305_1.sm', optimum: 53, path: 41, work: 32, lft: 58 },
  { file: 'j60/j601_1.sm', optimum: 77, path: 77, lft: 77 },
  { file: 'pat1.rcp', optimum: 19 },
])('$file', ({ file, optimum, path, work, lft }) => {
  const text = shared(file);
  it.skipIf(text === null)(`takes ${optimum}${text === null ? ' (not run: the file is missing)' : ''}`, () => {
    const project = file.endsWith('.rcp') ? readRcp(text!) : readSm(text!);
    const answer = leastMakespan(project, { seed: 1, effort: 100_000 });
    expect(faultsOf(project, answer.starts)).toEqual([]);
    expect(answer).toMatchObject({ makespan: optimum, bound: optimum, proven: true });
    const bounds = lowerBounds(project);
    if (path !== undefined) expect(bounds.criticalPath).toBe(path);
    if (path !== undefined) expect(criticalPath(project).length).toBe(path);
    if (work !== undefined) expect(bounds.resourceWork).toBe(work);
    expect(bounds.best).toBeLessThanOrEqual(optimum);
    const byRule = serialSchedule(project, listBy(project, priorities(project, 'LFT')));
    if (lft !== undefined) expect(makespanOf(project, byRule)).toBe(lft);
  });
});

describe('sixteen projects of 30 jobs, optima as listed', () => {
  const listed = shared('j30/optimum.csv');
  const rows = (listed ?? '')
    .trim()
    .split('\n')
    .slice(1)
    .filter((_, i) => i % 16 === 0)
    .map((row) => row.split(','));
  it.skipIf(listed === null)(`are met${listed === null ? ' (not run: the files are missing)' : ''}`, () => {
    expect(rows.length).toBeGreaterThan(10);
    for (const [name, optimum] of rows) {
      const project = readSm(shared(`j30/${name}.sm`)!);
      const answer = leastMakespan(project, { seed: 1, effort: 40_000 });
      expect(faultsOf(project, answer.starts)).toEqual([]);
      expect([name, answer.makespan]).toEqual([name, Number(optimum)]);
      expect(answer.bound).toBeLessThanOrEqual(Number(optimum));
    }
  });
});
