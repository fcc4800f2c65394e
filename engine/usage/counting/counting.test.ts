import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { randomSource } from '../../foundation/random.ts';
import type { CountedCycle } from '../model.ts';
import { peaksOnly } from './peaks-only.ts';
import { eachRainflow, rainflow, rangePair, repeatingRainflow, simpleRange } from './rainflow.ts';

/** ASTM E1049-85 (2017), figures 3 to 6: reversals A to I of one history, counted by four methods; whole numbers, exact. */
const HISTORY = [-2, 1, -3, 5, -1, 3, -4, 4, -2];
const counted = (cycles: readonly CountedCycle[]) =>
  cycles.map((c) => `${c.max - c.min}@${(c.max + c.min) / 2}: ${c.count}`).sort();

describe('U6 ASTM E1049', () => {
  it('R1 rainflow', () => {
    expect(counted(rainflow(HISTORY))).toEqual(
      ['3@-0.5: 0.5', '4@-1: 0.5', '4@1: 1', '8@1: 0.5', '9@0.5: 0.5', '8@0: 0.5', '6@1: 0.5'].sort(),
    );
    expect(rainflow(HISTORY).reduce((t, c) => t + c.count, 0)).toBe(4);
  });
  it('R2 rainflow by range', () => {
    const by = new Map<number, number>();
    for (const c of rainflow(HISTORY)) by.set(c.max - c.min, (by.get(c.max - c.min) ?? 0) + c.count);
    expect([...by].sort((a, b) => a[0] - b[0])).toEqual([
      [3, 0.5],
      [4, 1.5],
      [6, 0.5],
      [8, 1],
      [9, 0.5],
    ]);
  });
  it('R3 range-pair', () => {
    expect(counted(rangePair(HISTORY))).toEqual(['8@1: 1', '6@1: 1', '4@1: 1', '3@-0.5: 1'].sort());
  });
  it('simple-range', () => {
    expect(counted(simpleRange(HISTORY))).toEqual(
      ['8@0', '8@1', '7@-0.5', '6@1', '6@2', '4@-1', '4@1', '3@-0.5'].map((r) => `${r}: 0.5`).sort(),
    );
  });
  it('R4 repeating history', () => {
    expect(counted(repeatingRainflow(HISTORY))).toEqual(['9@0.5: 1', '7@0.5: 1', '4@1: 1', '3@-0.5: 1'].sort());
  });
});

describe('short and flat histories', () => {
  it.each([
    ['none', [], []],
    ['one point', [3], []],
    ['a plateau', [3, 3, 3], []],
    ['two points', [0, 5], ['5@2.5: 0.5']],
    ['a rise with steps', [0, 1, 1, 2, 5], ['5@2.5: 0.5']],
  ])('rainflow of %s', (_, points, expected) => expect(counted(rainflow(points))).toEqual(expected));
  it('a range closes one that is as large', () => {
    expect(counted(rainflow([0, 5, 1, 5]))).toEqual(['4@3: 1', '5@2.5: 0.5']);
  });
  it('range-pair counts a range that stays alone as one', () => {
    expect(counted(rangePair([0, 5]))).toEqual(['5@2.5: 1']);
    expect(rangePair([2])).toEqual([]);
  });
  it('a repeating history of two points is one cycle, of one none', () => {
    expect(counted(repeatingRainflow([0, 5]))).toEqual(['5@2.5: 1']);
    expect(repeatingRainflow([4, 4])).toEqual([]);
  });
  it('peaks and valleys are kept, points on the way and equal neighbours dropped', () => {
    expect([...peaksOnly([1, 1, 2, 3, 3, 2, 2, 4, 0, 0])]).toEqual([1, 3, 2, 4, 0]);
  });
  it.each([Number.NaN, Number.POSITIVE_INFINITY])('%s is refused', (bad) => {
    expect(() => rainflow([0, bad, 1])).toThrow(expect.objectContaining({ code: 'foundation.not-finite' }));
  });
});

const history = fc.array(fc.integer({ min: -50, max: 50 }), { maxLength: 60 });
const sum = (cycles: readonly CountedCycle[]) => cycles.reduce((t, c) => t + c.count, 0);
/**
 * Another way to the same counts: of any four turning points in a row whose inner range lies within both outer ones the
 * inner counts one; what is left counts a half each. Summed by its two stresses.
 */
function byFourPoints(points: readonly number[]): Map<string, number> {
  const found = new Map<string, number>();
  const take = (a: number, b: number, count: number) => {
    const key = `${Math.max(a, b)} ${Math.min(a, b)}`;
    found.set(key, (found.get(key) ?? 0) + count);
  };
  const unlike = points.filter((p, i) => i === 0 || p !== points[i - 1]);
  const turns = unlike.filter((p, i) => {
    const [before, after] = [unlike[i - 1], unlike[i + 1]];
    return before === undefined || after === undefined || (p - before) * (after - p) < 0;
  });
  const left: number[] = [];
  for (const p of turns) {
    left.push(p);
    while (left.length >= 4) {
      const [a, b, c, d] = left.slice(-4) as [number, number, number, number];
      if (Math.abs(b - c) > Math.abs(a - b) || Math.abs(b - c) > Math.abs(c - d)) break;
      take(b, c, 1);
      left.splice(-3, 2);
    }
  }
  left.slice(1).forEach((p, i) => {
    take(left[i]!, p, 0.5);
  });
  return found;
}
const summed = (cycles: readonly CountedCycle[]) => {
  const found = new Map<string, number>();
  for (const { max, min, count } of cycles) found.set(`${max} ${min}`, (found.get(`${max} ${min}`) ?? 0) + count);
  return found;
};
const largest = (cycles: readonly CountedCycle[]) => Math.max(0, ...cycles.map((c) => c.max - c.min));

describe('laws', () => {
  it('rainflow counts each range between reversals as a half, and keeps the largest', () => {
    fc.assert(
      fc.property(history, (points) => {
        const cycles = rainflow(points);
        expect(2 * sum(cycles)).toBe(Math.max(0, peaksOnly(points).length - 1));
        expect(largest(cycles)).toBe(points.length ? Math.max(...points) - Math.min(...points) : 0);
      }),
    );
  });
  it('rainflow by four points counts the same, of short histories and of a hundred thousand points', () => {
    fc.assert(
      fc.property(history, (points) => {
        expect(byFourPoints(points)).toEqual(summed(rainflow(points)));
      }),
    );
    const random = randomSource(77, 0);
    const many = Array.from({ length: 100_000 }, () => Math.floor(1001 * random.next()) - 500);
    expect(byFourPoints(many)).toEqual(summed(rainflow(many)));
  });
  it('no method finds a range beyond the history, nor a larger sum of ranges than the path is long', () => {
    fc.assert(
      fc.property(history, (points) => {
        const path = simpleRange(points).reduce((t, c) => t + (c.max - c.min) / 2, 0);
        const travelled = rainflow(points).reduce((t, c) => t + (c.max - c.min) * c.count, 0);
        expect(travelled).toBeGreaterThanOrEqual(path - 1e-9);
        for (const count of [rainflow, rangePair, simpleRange, repeatingRainflow])
          expect(largest(count(points))).toBeLessThanOrEqual(
            points.length ? Math.max(...points) - Math.min(...points) : 0,
          );
      }),
    );
  });
  it('a repeating history: whole cycles, as many as it has peaks on its way round, wherever it is cut', () => {
    fc.assert(
      fc.property(history, fc.nat(), (points, cut) => {
        const k = points.length ? cut % points.length : 0;
        const turned = [...points.slice(k), ...points.slice(0, k)];
        expect(counted(repeatingRainflow(turned))).toEqual(counted(repeatingRainflow(points)));
        expect(repeatingRainflow(points).every((c) => c.count === 1)).toBe(true);
      }),
    );
  });
  it('upside down it is the same, mirrored', () => {
    fc.assert(
      fc.property(history, (points) => {
        const mirrored = rainflow(points.map((p) => -p)).map((c) => ({
          max: -c.min || 0,
          min: -c.max || 0,
          count: c.count,
        }));
        expect(counted(mirrored)).toEqual(counted(rainflow(points)));
      }),
    );
  });
  it('a million points, and a million that never close, in one pass', () => {
    const n = 1_000_000;
    let total = 0;
    eachRainflow(
      Float64Array.from({ length: n }, (_, i) => (i % 2 ? 1 : -1) * (1 + (i % 97))),
      (_a, _b, count) => {
        total += count;
      },
    );
    expect(total).toBe((n - 1) / 2);
    total = 0;
    eachRainflow(
      Float64Array.from({ length: n }, (_, i) => (i % 2 ? 1 : -1) * (n - i)),
      (_a, _b, count) => {
        total += count;
      },
    );
    expect(total).toBe((n - 1) / 2);
  });
});
