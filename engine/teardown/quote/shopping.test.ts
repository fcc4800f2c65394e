import { describe, expect, it } from 'vitest';
import type { TeardownInput } from '../document.ts';
import { smallJob, smallMap } from '../passes/testing/small-wing.ts';
import { planOf } from '../plan/index.ts';
import { codeWithLength, nextCode, rivetLength } from './rivet-length.ts';
import { shoppingOf } from './shopping.ts';
import { smallFloor } from './testing/small-floor.ts';

describe('length of a rivet', () => {
  /**
   * NAVEDTRA 14018, figure 13-43: L = 1 1/2 D + G. Read. A repair manual of 1943 gives the length beyond the grip of a
   * 1/8 rivet as 3/16. Read. Both are the same figure.
   */
  it('1/8 rivet: 3/16 beyond the grip', () =>
    expect(rivetLength(3.175, 3.175).need_mm - 3.175).toBeCloseTo((3 / 16) * 25.4, 9));
  it('goes up to the next sixteenth of an inch, and not beyond one that fits', () => {
    expect(rivetLength(3.2, 3.175).buy_mm).toBeCloseTo((6 / 16) * 25.4, 9); // 7.9625 mm needs more than 5/16 = 7.9375
    expect(rivetLength(3.175, 3.175).buy_mm).toBeCloseTo((5 / 16) * 25.4, 9);
  });
  /** AC 43.13-1B paragraph 4-57a: MS20470AD3-5 is 5/16 long; half sizes as MS20470AD4-3.5. Read. */
  it('the code carries the length in sixteenths, halves too', () => {
    expect(codeWithLength('MS20470AD3', (5 / 16) * 25.4)).toBe('MS20470AD3-5');
    expect(codeWithLength('MS20470AD4', (3.5 / 16) * 25.4)).toBe('MS20470AD4-3.5');
    expect(codeWithLength('MS20470AD4', 8)).toBe('MS20470AD4');
    expect(codeWithLength('W4-R', 25.4)).toBe('W4-R');
  });
  /** AC 43.13-1B paragraph 4-57b, page 4-16: the next larger size; sizes go by 1/32 inch. Read. */
  it('the next size is one thirty-second up', () =>
    expect([nextCode('MS20426AD4'), nextCode('X')]).toEqual(['MS20426AD5', 'X, next size']));
});

describe('a shopping list', () => {
  const list = (change: Partial<TeardownInput> = {}) => {
    const document = smallJob({ floor: smallFloor(), ...change });
    return shoppingOf(document, planOf(document));
  };
  const line = (code: string, change?: Partial<TeardownInput>) => list(change).lines.find((l) => l.code === code);

  it('counts the rows that are opened, with spares by the share of the code', () => {
    // web 10 and nose-row 20; spares a fifth: 6
    expect(line('MS20470AD4-6')).toMatchObject({
      count: 30,
      spares: 6,
      cents: { low: 360, high: 360 },
      joins: ['web', 'nose-row'],
    });
    expect(list().lines.flatMap((l) => l.joins)).not.toContain('panel-screws');
  });
  it('next size: as many as drilling out is expected to spoil, rounded up; not priced is not nothing', () => {
    // 10 holes at 0.05
    expect(line('MS20470AD5-6')).toMatchObject({ count: 0, spares: 1, cents: null });
    expect(list().warnings.join()).toContain('Not priced: MS20470AD5-6');
  });
  it('holes that were counted take the place of the expectation', () => {
    const recorded: TeardownInput['recorded'] = [
      { what: 'holes', join: 'web', elongated: 3, oversize: 1, on: '2026-12-02', by: 'x' },
    ];
    expect(line('MS20470AD5-6', { recorded })).toMatchObject({ count: 4, spares: 1 });
    expect(line('MS20470AD4-6', { recorded })).toMatchObject({ count: 26, spares: 6 });
  });
  it('bolts go back in: spares only, and none where the share is nothing', () => {
    expect(line('AN4')).toMatchObject({ count: 0, spares: 1, kind: 'bolt', length_mm: null });
    expect(line('NAS6608')).toBeUndefined();
  });
  it('the new part with its code, price and lead time', () =>
    expect(line('S-1')).toMatchObject({
      kind: 'part',
      count: 1,
      cents: { low: 100_000, high: 140_000 },
      lead_days: 20,
    }));
  it('consumables of the rows and of the coating, added up by name and unit', () => {
    const map = smallMap();
    map.joins[0] = { ...map.joins[0]!, consumables: [{ name: 'Primer', amount: 0.25, unit: 'litre' }] };
    map.coating = {
      ...map.coating!,
      materials: [
        { name: 'Primer', amount: 0.5, unit: 'litre' },
        { name: 'Rag', amount: 1, unit: 'roll' },
      ],
    };
    expect(line('Primer', { map })).toMatchObject({ count: 0.75, cents: { low: 3000, high: 3000 } });
    expect(line('Rag', { map })).toMatchObject({ cents: null });
  });
  it('tools of the plan, each once', () => expect(list().tools).toEqual([...new Set(list().tools)].sort()));
  it('without a floor nothing is priced, and it is said', () => {
    const document = smallJob();
    const { lines, warnings } = shoppingOf(document, planOf(document));
    expect(lines.filter((l) => l.kind !== 'part').every((l) => l.cents === null)).toBe(true);
    expect(warnings[0]).toContain('No floor');
  });
});
