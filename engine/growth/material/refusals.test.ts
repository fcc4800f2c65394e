import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { MPA_SQRT_M_PER_KSI_SQRT_IN } from '../../foundation/convert.ts';
import { off } from '../testing/inch.ts';
import { fitParis, MATERIALS, materialOf, stressRatio } from './index.ts';
import { toughnessAt } from './toughness.ts';

const from = { source: 'made for the test', known: 'invented' } as const;
const own = (law: object, k = 30, thicknesses = [6]) =>
  materialOf({
    name: 'a plate',
    law: { law: 'forman', units: 'mm, MPa√m', c: 1e-6, n: 3, kc: 80, from, ...law } as never,
    yield_MPa: { value: 300, from },
    toughness: thicknesses.map((thickness_mm) => ({ thickness_mm, k_MPa_sqrt_m: k, from })),
  });
const readings = (cycles: readonly number[], length = (i: number) => 9 + i) =>
  cycles.map((n, i) => ({ length_mm: length(i), cycles: n, range_MPa_sqrt_m: 10 + i }));

describe('refusals', () => {
  it.each([
    ['growth.stress-ratio', () => stressRatio(100, 100), /below 1/],
    ['growth.stress-ratio', () => stressRatio(100, 130), /Correct the cycle/],
    ['growth.not-positive', () => own({ kc: -80 }), /toughness of -80/],
    ['growth.not-positive', () => own({ c: 0 }), /growth constant of 0/],
    ['growth.not-positive', () => own({}, -30).toughnessAt(6), /toughness of -30/],
    ['growth.not-positive', () => own({}).toughnessAt(0), /thickness of 0/],
    ['growth.material-unknown', () => materialOf({ library: 'unobtainium', law: 'walker' }), /one of 2024-t3, /],
    ['growth.material-unknown', () => materialOf({ library: 'constructor', law: 'walker' }), /"constructor"/],
    ['growth.material-unknown', () => materialOf({ library: '2014-t6', law: 'paris' }), /holds for it: closure/],
    [
      'growth.thickness-outside',
      () => materialOf({ library: '2024-t3', law: 'walker' }).toughnessAt(26),
      /falls further/,
    ],
    ['growth.thickness-outside', () => own({}, 60, [6, 12]).toughnessAt(13), /plane strain/],
    ['growth.cannot-be-fitted', () => fitParis(readings([0, 1, 2])), /3 readings/],
    ['growth.cannot-be-fitted', () => fitParis(readings([0, 1000, 900, 2000])), /reading 3/],
    ['growth.cannot-be-fitted', () => fitParis(readings([0, 1000, 2000, 3000], (i) => 9 - i)), /not beyond/],
    [
      'growth.cannot-be-fitted',
      () => fitParis(readings([0, 1000, 2000, 9000])),
      /an exponent that runs to 1$|exponent/,
    ],
    [
      'growth.cannot-be-fitted',
      () => fitParis([{ length_mm: 1, cycles: 0, range_MPa_sqrt_m: 0 }, ...readings([1, 2, 3])]),
      /a range of 0/,
    ],
  ])('%s', (code, doing, words) => {
    expect(doing).toThrow(expect.objectContaining({ code }));
    expect(doing).toThrow(words);
  });
});

describe('toughness against thickness', () => {
  const chart = MATERIALS['2024-t3']!;
  const at = (t: number) => toughnessAt(chart.toughness, chart.yield.value, t).value;
  it('is straight between two points: 2024-T3 L-T at 0.375 in lies half-way from 139.4 to 123.0', () =>
    expect(off(at(9.525) / MPA_SQRT_M_PER_KSI_SQRT_IN, 131.2)).toBeLessThan(1e-12));
  it('stock thinner than the thinnest point has its value', () => expect(at(0.5)).toBe(at(1.6)));
  it('does not rise with thickness, whatever the order of the points', () => {
    const mixed = [...chart.toughness].reverse();
    fc.assert(
      fc.property(
        fc.double({ min: 0.3, max: 25, noNaN: true }),
        fc.double({ min: 0, max: 0.4, noNaN: true }),
        (t, more) => {
          expect(at(t + more)).toBeLessThanOrEqual(at(t));
          expect(toughnessAt(mixed, 290, t).value).toBe(at(t));
        },
      ),
    );
  });
  it('holds beyond the thickest point where plane strain is reached there: 30 MPa√m, 300 MPa: from 25 mm', () =>
    expect(own({}, 30, [12, 25.1]).toughnessAt(80).value).toBe(30));
  it('a figure between a point that was read and a remembered one is a remembered one', () => {
    const points = [
      { thickness_mm: 2, k_MPa_sqrt_m: 90, from: { ...from, known: 'read' } },
      { thickness_mm: 8, k_MPa_sqrt_m: 60, from: { ...from, known: 'memory' } },
    ] as const;
    expect(toughnessAt(points, 300, 4)).toMatchObject({ value: 80, from: { known: 'memory' } });
    expect(toughnessAt(points, 300, 2).from.known).toBe('read');
  });
});
