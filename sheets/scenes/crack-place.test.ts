import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { growthExample } from '../../examples/scenario/growth.ts';
import type { Scene } from '../model.ts';
import { crackPlaceScene } from './crack-place.ts';

const scene = (change: object = {}, units: 'mm' | 'inch' = 'mm') =>
  crackPlaceScene({ ...growthExample, ...change }, units);
const words = (s: Scene | null) => s!.marks.flatMap((m) => (m.is === 'text' ? [m.text] : []));
/** Left and right ends of the first flaw as it is drawn from the front. */
const crack = (s: Scene | null) => {
  const front = s!.marks.find((m) => m.is === 'path' && m.title === 'the first flaw');
  const [from, to] = /^M([\d.]+) [\d.]+H([\d.]+)$/
    .exec(front?.is === 'path' ? front.d : '')!
    .slice(1)
    .map(Number);
  return { from: from!, to: to! };
};

describe('the place of a crack, drawn', () => {
  it('is to scale: the crack begins at the edge of the hole and is as long against the width as it is', () => {
    const s = scene();
    const hole = s!.marks.find((m) => m.is === 'circle')!;
    const { from, to } = crack(s);
    expect(hole.is === 'circle' && hole.x + hole.r).toBeCloseTo(from, 0);
    // 250 units of drawing are 64 mm.
    expect(to - from).toBeCloseTo((1.27 / 64) * 250, 0);
    expect(hole.is === 'circle' && hole.r).toBeCloseTo((4 / 64) * 250, 0);
  });
  it('names its lengths in the units of the reader', () => {
    expect(words(scene())).toEqual(expect.arrayContaining(['64 mm', '8 mm', '6 mm', 'c 1.27 mm', 'a 1.27 mm']));
    expect(words(scene({}, 'inch'))).toEqual(expect.arrayContaining(['2.52 in', 'c 0.05 in']));
  });
  it('a hole off the middle stands off the middle', () => {
    const geometry = { shape: 'hole_near_edge', width_mm: 100, thickness_mm: 5, diameter_mm: 10, edge_distance_mm: 20 };
    const { from } = crack(scene({ geometry, first_flaw: { c_mm: 2 } }));
    expect(from).toBeCloseTo(24 + (85 / 100) * 250, 0);
  });
  it('is drawn from what was written in inch', () => {
    const geometry = { shape: 'edge_through', width_in: 2, thickness_in: 0.1 };
    expect(words(scene({ geometry, first_flaw: { c_in: 0.2 } }))).toEqual(
      expect.arrayContaining(['50.8 mm', 'c 5.08 mm']),
    );
  });
  it('waits for the lengths that it needs, and draws nothing that does not fit', () => {
    const geometry = growthExample.geometry;
    for (const g of [
      {},
      { ...geometry, width_mm: undefined },
      { ...geometry, diameter_mm: 64 },
      { ...geometry, width_mm: '6' },
    ])
      expect(scene({ geometry: g })).toBeNull();
    expect(words(scene({ first_flaw: { c_mm: 50, a_mm: 1 } }))).toContain('The first flaw has no length yet.');
    expect(crackPlaceScene(null, 'mm')).toBeNull();
    expect(crackPlaceScene({ geometry: { width_mm: 3, width_in: 4 } }, 'mm')).toBeNull();
  });
  it('holds no figure that is none, whatever is written, for any shape', () => {
    const shapes = ['centre_through', 'edge_through', 'hole_through', 'hole_near_edge', 'lug_through', 'hole_corner'];
    const more = [
      'hole_corner_bearing',
      'hole_bore',
      'plate_surface',
      'plate_corner',
      'plate_corner_table',
      'own_table',
    ];
    const size = fc.oneof(fc.double({ min: -5, max: 200, noNaN: true }), fc.constant(undefined), fc.string());
    fc.assert(
      fc.property(
        fc.constantFrom(...shapes, ...more),
        fc.tuple(size, size, size, size, size, size),
        fc.constantFrom(1, 2),
        (shape, [width_mm, thickness_mm, diameter_mm, edge_distance_mm, c_mm, a_mm], cracks) => {
          const geometry = { shape, width_mm, thickness_mm, diameter_mm, edge_distance_mm, cracks };
          const s = crackPlaceScene({ geometry, first_flaw: { c_mm, a_mm } }, 'mm');
          expect(JSON.stringify(s)).not.toMatch(/NaN|Infinity|undefined/);
        },
      ),
    );
  });
});
