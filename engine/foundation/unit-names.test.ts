import { describe, expect, it } from 'vitest';
import { engineNameOf, inEngineUnits, otherNamesOf } from './unit-names.ts';

describe('figures by the unit that their field names', () => {
  it('are turned into engine units, also deep inside; the exact factors are those of the definitions', () => {
    expect(inEngineUnits({ depth_in: 0.05, deep: [{ stress_ksi: 1, speed_kt: 1 }], title_in: 'x' })).toEqual({
      depth_mm: 0.05 * 25.4,
      deep: [{ stress_MPa: expect.closeTo(6.894757, 6), speed_m_per_s: expect.closeTo(0.514444, 6) }],
      title_in: 'x',
    });
    expect(inEngineUnits({ response_g_per_ft_per_s: 1 })).toEqual({
      response_g_per_m_per_s: expect.closeTo(3.28084, 5),
    });
    // 1 ksi√in is 1.098843 MPa√m.
    expect(inEngineUnits({ k_ksi_sqrt_in: 1 })).toEqual({ k_MPa_sqrt_m: expect.closeTo(1.098843, 6) });
  });
  it('the end of a compound unit is no unit of its own: such a field stays as it is, to be refused', () => {
    for (const field of ['response_g_per_kt', 'k_MPa_sqrt_ft', 'k_MPa_sqrt_in', 'rate_per_in', 'rate_g_per_ft'])
      expect(inEngineUnits({ [field]: 2 })).toEqual({ [field]: 2 });
    expect(otherNamesOf('response_g_per_m_per_s')).toEqual(['response_g_per_ft_per_s']);
    expect(otherNamesOf('k_MPa_sqrt_m')).toEqual(['k_ksi_sqrt_in']);
  });
  it('a name leads to its field, and from the field back to it', () => {
    for (const field of ['a_mm', 'stress_MPa', 'speed_m_per_s', 'chord_m', 'loading_Pa', 'density_kg_per_m3'])
      for (const other of otherNamesOf(field)) expect(engineNameOf(other)).toBe(field);
    expect(engineNameOf('a_mm')).toBe('a_mm');
    expect(otherNamesOf('hours')).toEqual([]);
  });
  it('a list of figures, and of lists of them, is turned figure by figure; what is none in it stays', () => {
    const given = { cycles_ksi: [[10, -2], [7, '3'], null], widths_in: [1, 2], none_ft: [], deep: [{ at_ksi: [1] }] };
    expect(inEngineUnits(given)).toEqual({
      cycles_MPa: [
        [expect.closeTo(68.94757, 5), expect.closeTo(-13.789515, 6)],
        [expect.closeTo(48.2633, 4), '3'],
        null,
      ],
      widths_mm: [25.4, 50.8],
      none_m: [],
      deep: [{ at_MPa: [expect.closeTo(6.894757, 6)] }],
    });
    expect(inEngineUnits({ rows_in: [{ a_in: 1 }] })).toEqual({ rows_in: [{ a_mm: 25.4 }] });
  });
  it('one figure in two units is refused', () => {
    expect(() => inEngineUnits({ a_mm: 1, a_in: 2 })).toThrow(/beside the same figure in another unit/);
    expect(() => inEngineUnits({ a_MPa: [[1, 2]], a_ksi: [[1, 2]] })).toThrow(/beside the same figure in another unit/);
  });
});
