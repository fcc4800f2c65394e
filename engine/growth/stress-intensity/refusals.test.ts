import { describe, expect, it } from 'vitest';
import type { RefusalCode } from '../../foundation/refusal-codes.ts';
import type { Geometry } from '../document.ts';
import type { CrackSize } from '../model.ts';
import { crackForm } from './index.ts';

const plate = { width_mm: 60, thickness_mm: 4 };
const hole = { ...plate, diameter_mm: 6 };
const none = { bearing_ratio: 0 };
const from = { source: 'made up for a test', known: 'invented' as const };
const corner = { shape: 'hole_corner', ...hole, cracks: 1, bending_ratio: 0 } as const;
const surface = { shape: 'plate_surface', ...plate, bending_ratio: 0 } as const;
const table = (sizes: number[]): Geometry => ({
  shape: 'own_table',
  ...plate,
  points: sizes.map((c_mm) => ({ c_mm, beta: 1 })),
  from,
});

describe('a body that cannot be', () => {
  it.each<[string, RefusalCode, Geometry, RegExp]>([
    ['hole larger than the plate', 'growth.geometry-impossible', { ...corner, diameter_mm: 61 }, /61 mm.*60 mm wide/],
    [
      'hole as large as the plate',
      'growth.geometry-impossible',
      { shape: 'hole_through', ...hole, diameter_mm: 60, cracks: 2, ...none },
      /hole is smaller/,
    ],
    ['lug', 'growth.geometry-impossible', { shape: 'lug_through', ...hole, diameter_mm: 70 }, /70 mm/],
    ['bore', 'growth.geometry-impossible', { shape: 'hole_bore', ...hole, diameter_mm: 70, cracks: 1 }, /70 mm/],
    [
      'hole through the edge',
      'growth.geometry-impossible',
      { shape: 'hole_near_edge', ...hole, edge_distance_mm: 3, ...none },
      /inside the edge/,
    ],
    [
      'near edge that is the far one',
      'growth.geometry-impossible',
      { shape: 'hole_corner_bearing', ...hole, edge_distance_mm: 31, ...none },
      /half the width/,
    ],
    ['sizes that fall', 'growth.table-not-rising', table([1, 3, 2]), /2 mm stands after 3 mm/],
    ['a size twice', 'growth.table-not-rising', table([1, 1]), /1 mm stands after 1 mm/],
  ])('%s', (_, code, geometry, words) => {
    expect(() => crackForm(geometry)).toThrow(words);
    expect(() => crackForm(geometry)).toThrow(expect.objectContaining({ code }));
  });
});

describe('a crack that does not fit, or that the solution does not hold', () => {
  it.each<[string, RefusalCode, Geometry, CrackSize, RegExp]>([
    ['no length', 'growth.geometry-impossible', corner, { c_mm: 0, a_mm: 1 }, /length c of 0/],
    ['no depth', 'growth.geometry-impossible', corner, { c_mm: 1 }, /depth a of 0/],
    ['negative', 'growth.geometry-impossible', surface, { c_mm: -1, a_mm: 1 }, /length c of -1/],
    ['not a number', 'growth.geometry-impossible', surface, { c_mm: Number.NaN, a_mm: 1 }, /NaN/],
    ['deeper than thick', 'growth.geometry-impossible', corner, { c_mm: 4, a_mm: 4.1 }, /4\.1 mm.*4 mm/],
    [
      'in a bore 2a',
      'growth.geometry-impossible',
      { shape: 'hole_bore', ...hole, cracks: 1 },
      { c_mm: 2, a_mm: 2.1 },
      /2\.1 mm; half of the thickness leaves 2 mm/,
    ],
    ['longer than the ligament', 'growth.geometry-impossible', corner, { c_mm: 28, a_mm: 1 }, /28 mm.*27 mm/],
    [
      'longer than the near ligament',
      'growth.geometry-impossible',
      { shape: 'hole_near_edge', ...hole, edge_distance_mm: 9, ...none },
      { c_mm: 6.5 },
      /near edge leaves 6 mm/,
    ],
    [
      'longer than half the width',
      'growth.geometry-impossible',
      { shape: 'centre_through', ...plate },
      { c_mm: 31 },
      /30 mm/,
    ],
    [
      'through the edge',
      'growth.geometry-impossible',
      { shape: 'edge_through', ...plate, bending_ratio: 0 },
      { c_mm: 61 },
      /60 mm/,
    ],
    [
      'centre',
      'growth.outside-solution',
      { shape: 'centre_through', ...plate },
      { c_mm: 25 },
      /a crack of c 25 mm: length over width, 2c\/W, is 0\.8333/,
    ],
    [
      'edge',
      'growth.outside-solution',
      { shape: 'edge_through', ...plate, bending_ratio: 0 },
      { c_mm: 37 },
      /c\/W, is 0\.6167/,
    ],
    [
      'close to the edge',
      'growth.outside-solution',
      { shape: 'hole_through', ...hole, cracks: 2, ...none },
      { c_mm: 26.9 },
      /ligament/,
    ],
    [
      'two cracks far out',
      'growth.outside-solution',
      { shape: 'hole_through', ...hole, width_mm: 900, cracks: 2, ...none },
      { c_mm: 91 },
      /c\/R, is 30\.33.*up to 30/,
    ],
    [
      'one crack with bearing, where its factor changes sign',
      'growth.outside-solution',
      { shape: 'hole_through', ...hole, cracks: 1, bearing_ratio: 0.1 },
      { c_mm: 9 },
      /c\/R, is 3; .*up to 2\.96/,
    ],
    ['lug close to its edge', 'growth.outside-solution', { shape: 'lug_through', ...hole }, { c_mm: 26.9 }, /ligament/],
    ['shallow', 'growth.outside-solution', corner, { c_mm: 6, a_mm: 1 }, /a\/c, is 0\.1667.*0\.2 to 2/],
    ['deep', 'growth.outside-solution', corner, { c_mm: 1, a_mm: 2.1 }, /a\/c, is 2\.1/],
    [
      'thick for the hole',
      'growth.outside-solution',
      { ...corner, thickness_mm: 6.5 },
      { c_mm: 1, a_mm: 1 },
      /r\/t, is 0\.4615/,
    ],
    [
      'narrow',
      'growth.outside-solution',
      { ...corner, width_mm: 20 },
      { c_mm: 2.5, a_mm: 2 },
      /\(r \+ n c\)\/b.*from memory/,
    ],
    ['surface, deep', 'growth.outside-solution', surface, { c_mm: 1, a_mm: 2.1 }, /a\/c, is 2\.1/],
    ['surface, long', 'growth.outside-solution', surface, { c_mm: 16, a_mm: 2 }, /2c\/W/],
    [
      'surface, long and shallow',
      'growth.outside-solution',
      { ...surface, thickness_mm: 2 },
      { c_mm: 14, a_mm: 1.95 },
      /1\.25/,
    ],
    ['plate corner', 'growth.outside-solution', { shape: 'plate_corner', ...plate }, { c_mm: 31, a_mm: 3.9 }, /a\/c/],
    [
      'plate corner, wide',
      'growth.outside-solution',
      { shape: 'plate_corner', width_mm: 5, thickness_mm: 4 },
      { c_mm: 3, a_mm: 2 },
      /c\/W/,
    ],
    [
      'corner by the table',
      'growth.outside-solution',
      { shape: 'plate_corner_table', ...plate, in_plane_bending_ratio: 0, out_of_plane_bending_ratio: 0 },
      { c_mm: 12, a_mm: 2 },
      /a\/c, is 0\.1667/,
    ],
    [
      'a tip that bending presses shut',
      'growth.outside-solution',
      { shape: 'plate_corner_table', ...plate, in_plane_bending_ratio: 0, out_of_plane_bending_ratio: 9 },
      { c_mm: 3.9, a_mm: 3.9 },
      /press shut/,
    ],
    ['own table, before it', 'growth.outside-solution', table([1, 3]), { c_mm: 0.9 }, /from 1 to 3 mm/],
    ['own table, beyond it', 'growth.outside-solution', table([1, 3]), { c_mm: 3.1 }, /from 1 to 3 mm/],
    ['own table, beyond the body', 'growth.geometry-impossible', table([1, 90]), { c_mm: 70 }, /60 mm/],
  ])('%s', (_, code, geometry, size, words) => {
    const form = crackForm(geometry);
    expect(() => form.k(size)).toThrow(words);
    expect(() => form.k(size)).toThrow(expect.objectContaining({ code }));
    expect(form.outside(size)).not.toBeNull();
  });
  it('without bearing one crack may be longer than that', () => {
    const open = crackForm({ shape: 'hole_through', ...hole, cracks: 1, ...none });
    expect(open.outside({ c_mm: 20 })).toBeNull();
  });
});
