import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { structureExample } from '../../examples/scenario/wing.ts';
import {
  between,
  drawingFrame,
  freshLine,
  freshOutline,
  inPicture,
  mapDrawing,
  mirrored,
  nudged,
  onWing,
  pointsOf,
} from './map-drawing.ts';

const sides = fc.constantFrom('left', 'right', 'both');

describe('a map while it is drawn', () => {
  it('a place of the wing, seen in the picture and taken back, is itself to 5 mm', () => {
    fc.assert(
      fc.property(sides, fc.integer({ min: -400, max: 3000 }), fc.integer({ min: -5200, max: 5200 }), (side, x, y) => {
        const f = drawingFrame(structureExample, side);
        const [px, py] = inPicture(f, [x, y]);
        const [x2, y2] = onWing(f, [px / f.width, py / f.height]);
        // A tenth of a picture unit and half a step of 5 mm.
        const near = 2.5 + 0.06 / f.scale;
        expect(Math.abs(x2 - x)).toBeLessThanOrEqual(near);
        expect(Math.abs(y2 - y)).toBeLessThanOrEqual(near);
      }),
    );
  });
  it('starboard is to the right and aft is down', () => {
    const f = drawingFrame(structureExample, 'both');
    const [left, right] = [inPicture(f, [500, -3000]), inPicture(f, [500, 3000])];
    expect(left[0]).toBeLessThan(right[0]);
    expect(left[1]).toBe(right[1]);
    expect(inPicture(f, [1500, 0])[1]).toBeGreaterThan(inPicture(f, [100, 0])[1]);
  });
  it('draws every whole part and row of a side, and leaves out what is half typed', () => {
    const f = drawingFrame(structureExample, 'right');
    const whole = mapDrawing(structureExample, 'right', f);
    expect(whole.parts).toHaveLength(structureExample.parts.filter((p) => p.side !== 'left').length);
    expect(whole.joins).toHaveLength(structureExample.joins.filter((j) => j.side !== 'left').length);
    expect(JSON.stringify(whole)).not.toMatch(/NaN|null|undefined/);
  });
  it('takes any nonsense without a fault', () => {
    fc.assert(
      fc.property(fc.jsonValue(), sides, (json, side) => {
        for (const draft of [json, { parts: json, joins: json }, { parts: [json], joins: [{ line: json }] }]) {
          const f = drawingFrame(draft, side);
          expect(JSON.stringify([f, mapDrawing(draft, side, f)])).not.toMatch(/null|NaN/);
        }
      }),
    );
  });
  it('a new part and a new row lie in the picture', () => {
    for (const side of ['left', 'right', 'both'] as const) {
      const f = drawingFrame(structureExample, side);
      for (const p of [...freshOutline(f), ...freshLine(f)]) {
        const [x, y] = inPicture(f, p);
        expect(x > 0 && x < f.width && y > 0 && y < f.height).toBe(true);
      }
    }
  });
  it('arrow keys move a point by 10 mm, with Shift by 1 mm; up is towards the nose', () => {
    expect(nudged([100, 200], 'ArrowUp', false)).toEqual([90, 200]);
    expect(nudged([100, 200], 'ArrowRight', true)).toEqual([100, 201]);
    expect(nudged([100, 200], 'ArrowDown', true)).toEqual([101, 200]);
    expect(nudged([100, 200], 'ArrowLeft', false)).toEqual([100, 190]);
    expect(nudged([100, 200], 'Enter', false)).toBeNull();
    expect(between([0, 10], [20, 40])).toEqual([10, 25]);
  });
});

describe('the other wing', () => {
  it('twice mirrored is itself', () => {
    for (const thing of [...structureExample.parts, ...structureExample.joins])
      expect(mirrored(mirrored(thing))).toEqual(thing);
  });
  it('names, ids and needs say the other hand; places lie on the other side', () => {
    const tank = structureExample.parts.find((p) => p.id === 'left-tank')!;
    const other = mirrored(tank) as typeof tank;
    expect([other.id, other.name, other.side]).toEqual(['right-tank', 'Right fuel tank', 'right']);
    const row =
      structureExample.joins.find((j) => j.id === 'left-row-nose-outboard-upper' && j.needs) ??
      structureExample.joins.find((j) => j.side === 'left' && JSON.stringify(j.needs ?? '').includes('left-'))!;
    expect(JSON.stringify(row.needs)).toContain('left-');
    expect((mirrored(row) as typeof row).needs).toEqual(
      JSON.parse(JSON.stringify(row.needs).replaceAll('left-', 'right-')),
    );
    expect(pointsOf(other.outline).every(([, y]) => y > 0)).toBe(true);
    expect(other.outline).toEqual(structureExample.parts.find((p) => p.id === 'right-tank')!.outline);
  });
});
