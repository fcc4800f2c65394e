import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { STANDINGS } from '../../engine/directive/document.ts';
import { standings } from '../testing/tables.ts';
import { inOrder, WORST_FIRST } from './order.ts';

const ids = (column: string, direction: 'ascending' | 'descending') =>
  inOrder(standings.rows, column, direction).map((r) => r.id);

describe('sorting follows "treat as"', () => {
  test("the list of standings is the engine's, worst first", () => {
    expect([...WORST_FIRST].reverse()).toEqual([...STANDINGS]);
  });
  test('by standing, the worst first', () => {
    expect(ids('standing', 'ascending')).toEqual(['strap', 'left', 'right']);
  });
  test('most counted first takes the high end, and an empty cell comes last', () => {
    expect(ids('counted', 'descending')).toEqual(['left', 'right', 'strap']);
    expect(ids('counted', 'ascending')).toEqual(['left', 'right', 'strap']);
  });
  test('soonest first, overdue before all', () => {
    expect(ids('line', 'ascending')).toEqual(['strap', 'left', 'right']);
    expect(ids('about', 'ascending')).toEqual(['strap', 'left', 'right']);
  });
  test('"before further flight" stands before every figure, and none of them is lost', () => {
    const cell = (text: string, value?: number) =>
      value === undefined
        ? { is: 'text' as const, text }
        : { is: 'quantity' as const, value, unit: 'h', places: 0, text };
    const rows = [cell('900', 900), cell('before further flight'), cell('20', 20), cell('before the papers begin')];
    const order = inOrder(
      rows.map((at, i) => ({ id: String(i), cells: { at } })),
      'at',
      'ascending',
    );
    expect(order.map((r) => r.id)).toEqual(['1', '3', '2', '0']);
  });
  test('law: no row is lost, and no standing stands before a worse one', () => {
    const row = fc.constantFrom(...STANDINGS).map((worst) => ({ worst }));
    fc.assert(
      fc.property(fc.array(row), (list) => {
        const rows = list.map(({ worst }, i) => ({
          id: String(i),
          cells: { s: { is: 'standing', worst, best: 'ended', act: false, text: worst } as const },
        }));
        const order = inOrder(rows, 's', 'ascending').map((r) => list[Number(r.id)]!.worst);
        expect([...order].sort()).toEqual(list.map((r) => r.worst).sort());
        for (let i = 1; i < order.length; i += 1)
          expect(STANDINGS.indexOf(order[i - 1]!)).toBeGreaterThanOrEqual(STANDINGS.indexOf(order[i]!));
      }),
    );
  });
});
