import fc from 'fast-check';
import { expect, it } from 'vitest';
import { byKey, enlarge, move, turn, type View, WHOLE } from './view.ts';

const at = fc.record({ x: fc.integer({ min: -500, max: 500 }), y: fc.integer({ min: -500, max: 500 }) });
const view: fc.Arbitrary<View> = fc.record({
  turned: fc.constantFrom(0, 90, 180, 270),
  larger: fc.double({ min: 0.5, max: 3, noNaN: true }),
  x: fc.integer({ min: -900, max: 900 }),
  y: fc.integer({ min: -900, max: 900 }),
});

it('the point under the fingers stays where it is', () => {
  fc.assert(
    fc.property(view, at, fc.double({ min: 0.6, max: 1.8, noNaN: true }), (v, p, by) => {
      const w = enlarge(v, by, p);
      expect((p.x - w.x) / w.larger).toBeCloseTo((p.x - v.x) / v.larger, 6);
      expect((p.y - w.y) / w.larger).toBeCloseTo((p.y - v.y) / v.larger, 6);
    }),
  );
});
it('four quarter turns, a move and its way back, larger and smaller are nothing', () => {
  expect([1, 1, 1, 1].reduce(turn, WHOLE)).toEqual(WHOLE);
  expect(turn(WHOLE, -1).turned).toBe(270);
  expect(move(move(WHOLE, 5, -3), -5, 3)).toEqual(WHOLE);
  expect(byKey(byKey(WHOLE, '+')!, '-')!.larger).toBeCloseTo(1, 9);
});
it('keys move the paper as the arrows say, and leave others alone', () => {
  expect(byKey(WHOLE, 'ArrowRight')!.x).toBeLessThan(0);
  expect(byKey(WHOLE, 'ArrowDown')!.y).toBeLessThan(0);
  expect(byKey({ ...WHOLE, turned: 90, larger: 3, x: 9 }, '0')).toEqual({ ...WHOLE, turned: 90 });
  expect(byKey(WHOLE, 'a')).toBeNull();
});
it('is never enlarged beyond bounds', () => {
  let v = WHOLE;
  for (let i = 0; i < 60; i++) v = enlarge(v, 2);
  expect(v.larger).toBe(8);
});
