import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { maximumClosure } from './index.ts';
import { drawn } from './testing/drawn.ts';

const data = fileURLToPath(new URL('../../../../shared/data/closure', import.meta.url));
const rowsOf = (end: string) =>
  readFileSync(join(data, `newman1.${end}`), 'utf8')
    .trim()
    .split(/\r?\n/)
    .map((line) => line.trim().split(/\s+/).map(Number));

/** MineLib (Espinoza, Goycoolea, Moreno, Newman), Ann. Oper. Res. 206 (2013) 93-114, table of ultimate pits: 26,086,899. */
it.skipIf(!existsSync(data))('newman1: 26,086,899 by 1,059 of 1,060 (not run where the data are missing)', () => {
  const worth = rowsOf('upit').map((row) => row[1]!);
  const found = maximumClosure(
    worth,
    rowsOf('prec').map((row) => row.slice(2)),
  );
  expect(worth.length).toBe(1060);
  expect(found.worth).toBeCloseTo(26_086_899.03, 2);
  expect(found.chosen.length).toBe(1059);
});

describe('the best choice', () => {
  it('is worth what trying every choice finds, rings among them, and is closed', () => {
    fc.assert(
      fc.property(fc.nat(1e9), fc.integer({ min: 1, max: 11 }), (seed, things) => {
        const { cost, clauses } = drawn(seed, things);
        const worth = cost.map((c) => 4.3 - c);
        const needs = clauses.map((list) => list.flat());
        const found = maximumClosure(worth, needs);
        let best = 0;
        for (let set = 0; set < 1 << things; set++) {
          if (!needs.every((list, j) => !((set >> j) & 1) || list.every((k) => (set >> k) & 1))) continue;
          best = Math.max(
            best,
            worth.reduce((s, w, j) => s + ((set >> j) & 1 ? w : 0), 0),
          );
        }
        expect(found.worth).toBeCloseTo(best, 9);
        for (const j of found.chosen) for (const k of needs[j]!) expect(found.chosen).toContain(k);
      }),
      { numRuns: 300, seed: 11 },
    );
  });

  it('opens for two what pays for neither alone', () => {
    expect(maximumClosure([-50, 30, 30], [[], [0], [0]])).toEqual({ chosen: [0, 1, 2], worth: 10 });
    expect(maximumClosure([-50, 30, 10], [[], [0], [0]])).toEqual({ chosen: [], worth: 0 });
  });

  it.each([
    [[1], [], /1 worths and prerequisites of 0/],
    [[Number.NaN], [[]], /NaN as the worth of 0/],
    [[1], [[1]], /1 as a prerequisite of 0/],
  ] as const)('refuses %j with %j', (worth, needs, text) => {
    expect(() => maximumClosure(worth, needs)).toThrow(expect.objectContaining({ code: 'teardown.problem-unsound' }));
    expect(() => maximumClosure(worth, needs)).toThrow(text);
  });
});
