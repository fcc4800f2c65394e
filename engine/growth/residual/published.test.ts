import { describe, expect, it } from 'vitest';
import { asKsi, asKsiRootInch, inch, ksi, ksiRootInch, off } from '../testing/inch.ts';
import { centre, edge, wide } from '../testing/plain-forms.ts';
import { correctedK, feddersen, fracture, longestAfterProof, netSectionYield, plasticZone } from './index.ts';

/** AE 737 homeworks 3 and 4, in and ksi. "Converged" where the homework's own loop stopped at 0.3 %. */
describe('AE 737, plastic zone and residual strength', () => {
  const hw3 = edge(inch(6), inch(0.25));
  const corrected = (constraint: Parameters<typeof correctedK>[4]) =>
    correctedK(hw3, inch(1.5), ksi(15), ksi(65), constraint);

  it('P1 homework 3, 1: edge a 1.5, W 6, 15 ksi: printed 48.99928079724', () =>
    expect(off(asKsiRootInch(ksi(15) * hw3.k({ c_mm: inch(1.5) }).c), 48.99928079724)).toBeLessThan(1e-12));
  it('P2 yield 65: printed 52.396000 and 50.012671 within 0.3 %; converged 52.403752 and 50.014351', () => {
    const [stress, strain] = [asKsiRootInch(corrected('plane stress').k), asKsiRootInch(corrected('plane strain').k)];
    expect(off(stress, 52.396)).toBeLessThan(3e-3);
    expect(off(strain, 50.012671)).toBeLessThan(3e-3);
    expect(off(stress, 52.403752)).toBeLessThan(1e-7);
    expect(off(strain, 50.014351)).toBeLessThan(1e-7);
  });
  it('P3 t 0.25: I of the uncorrected K printed 3.290395950; K 51.13956626 within 0.3 %', () => {
    const zone = plasticZone(ksi(15) * hw3.k({ c_mm: inch(1.5) }).c, ksi(65), { thickness_mm: inch(0.25) });
    expect(off(zone.constraint, 3.29039595)).toBeLessThan(1e-9);
    expect(off(asKsiRootInch(corrected({ thickness_mm: inch(0.25) }).k), 51.13956626)).toBeLessThan(3e-3);
  });
  it('P4 centre a 1, W 7, 45 ksi, yield 75: printed 1.0441450 and 1.1660533; converged 1.0441713 and 1.1671459', () => {
    const ratio = (constraint: 'plane strain' | 'plane stress') => {
      const { k, elastic } = correctedK(centre(inch(7), inch(0.1)), inch(1), ksi(45), ksi(75), constraint);
      return k / elastic;
    };
    expect(off(ratio('plane strain'), 1.044145)).toBeLessThan(3e-3);
    expect(off(ratio('plane stress'), 1.1660533)).toBeLessThan(3e-3);
    expect(off(ratio('plane strain'), 1.0441713)).toBeLessThan(5e-8);
    expect(off(ratio('plane stress'), 1.1671459)).toBeLessThan(5e-8);
  });
  it('P5 homework 4, 1: 4 in crack broke at 30 ksi, yield 100: printed Kc 76.94664961', () => {
    const k = correctedK(wide(inch(0.1)), inch(2), ksi(30), ksi(100), 'plane stress').k;
    expect(off(asKsiRootInch(k), 76.94664961)).toBeLessThan(3e-4);
  });
  it('P6 the 9 in crack then breaks at 20.25428513 ksi; the 0.1 in crack printed 114.31, above yield', () => {
    const strength = { yield_MPa: ksi(100), toughness_MPa_sqrt_m: ksiRootInch(76.94664961) };
    const at = (c: number) => asKsi(fracture(wide(inch(0.1)), { c_mm: inch(c) }, strength));
    expect(off(at(4.5), 20.25428513)).toBeLessThan(1e-4);
    expect(off(at(0.05), 114.31)).toBeLessThan(1e-3);
    expect(at(0.05)).toBeGreaterThan(100);
  });
  it.each([
    [32, 8.48364],
    [29, 7.6883],
    [60, 15.90682],
    [46, 12.19523],
    [107, 28.36717],
  ])('homework 4, 2: edge a 2, W 8, Kc %d: printed %d ksi', (kc, printed) => {
    const strength = { yield_MPa: ksi(140), toughness_MPa_sqrt_m: ksiRootInch(kc), elastic: true };
    expect(Math.abs(asKsi(fracture(edge(inch(8), inch(1)), { c_mm: inch(2) }, strength)) - printed)).toBeLessThan(6e-6);
  });
  it('homework 4, 2 with the yielded zone, Kc 107, t 1, yield 140: printed 27.92693', () => {
    const strength = { yield_MPa: ksi(140), toughness_MPa_sqrt_m: ksiRootInch(107) };
    const at = fracture(edge(inch(8), inch(1)), { c_mm: inch(2) }, strength);
    expect(Math.abs(asKsi(at) - 27.92693)).toBeLessThan(6e-6);
  });
  it('P10 lecture 9, proof stress: edge a 0.4, W 5, Kc 140: β printed 1.161, stress 107.6', () => {
    const form = edge(inch(5), inch(0.1));
    const c_mm = inch(0.4);
    expect(Math.abs(form.k({ c_mm }).c / Math.sqrt((Math.PI * c_mm) / 1000) - 1.161)).toBeLessThan(5e-4);
    const strength = { yield_MPa: ksi(500), toughness_MPa_sqrt_m: ksiRootInch(140), elastic: true };
    expect(Math.abs(asKsi(fracture(form, { c_mm }, strength)) - 107.6)).toBeLessThanOrEqual(0.05);
    // And back: what held 107.552618 ksi holds no crack longer than 0.4 in.
    expect(off(longestAfterProof(form, ksi(107.552618496), strength)!, c_mm)).toBeLessThan(1e-8);
  });
});

describe('consistency with the equations', () => {
  it('the tangent in a wide sheet touches at two thirds of yield, at (1/π)(1.5 Kc/σys)²', () => {
    const tangent = feddersen(wide(2), { yield_MPa: 300, toughness_MPa_sqrt_m: 60 })!;
    expect(off(tangent.touches_mm, (1000 / Math.PI) * (90 / 300) ** 2)).toBeLessThan(1e-3);
    expect(off(tangent.at(tangent.touches_mm * 0.999999), 200)).toBeLessThan(1e-3);
    expect(off(tangent.at(tangent.touches_mm / 2), 250)).toBeLessThan(1e-3);
    expect(tangent.at(tangent.touches_mm * 1.01)).toBe(Number.POSITIVE_INFINITY);
  });
  it('net section: centre (W − 2a)/W, edge (W − a)/W', () => {
    expect(netSectionYield(centre(100, 2), { c_mm: 15 }, 300)).toBeCloseTo(210, 9);
    expect(netSectionYield(edge(100, 2), { c_mm: 15 }, 300)).toBeCloseTo(255, 9);
  });
  it('I runs from 6 in thick stock to 2 in thin stock', () => {
    const at = (thickness_mm: number) => plasticZone(60, 300, { thickness_mm }).constraint;
    expect(at(200)).toBe(6);
    expect(at(5)).toBe(2);
    expect(at(20)).toBeCloseTo(3.7, 9);
  });
});
