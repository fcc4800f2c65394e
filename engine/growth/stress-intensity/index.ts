import type { Geometry } from '../document.ts';
import type { CrackForm } from '../model.ts';
import { centreThrough } from './centre-through.ts';
import { type Compounded, compound, type Factors } from './compounding.ts';
import { edgeThrough } from './edge-through.ts';
import { holeBore } from './hole-bore.ts';
import { holeCorner } from './hole-corner.ts';
import { holeCornerBearing } from './hole-corner-bearing.ts';
import { holeNearEdge } from './hole-near-edge.ts';
import { holeThrough } from './hole-through.ts';
import { lugThrough } from './lug-through.ts';
import { ownTable } from './own-table.ts';
import { plateCorner } from './plate-corner.ts';
import { plateCornerTable } from './plate-corner-table.ts';
import { plateSurface } from './plate-surface.ts';
import { formOf, type Solution } from './solution.ts';

function solutionOf(g: Geometry): Solution {
  switch (g.shape) {
    case 'centre_through':
      return centreThrough(g);
    case 'edge_through':
      return edgeThrough(g);
    case 'hole_through':
      return holeThrough(g);
    case 'hole_near_edge':
      return holeNearEdge(g);
    case 'lug_through':
      return lugThrough(g);
    case 'hole_corner':
      return holeCorner(g);
    case 'hole_corner_bearing':
      return holeCornerBearing(g);
    case 'hole_bore':
      return holeBore(g);
    case 'plate_surface':
      return plateSurface(g);
    case 'plate_corner':
      return plateCorner(g);
    case 'plate_corner_table':
      return plateCornerTable(g);
    case 'own_table':
      return ownTable(g);
  }
}

/**
 * What K a stress makes of a crack of a size at its place.
 *
 * Linear elastic: K is in proportion to the remote stress. Every size is held against the range of its solution before
 * K is given.
 *
 * Not valid for: plasticity at the tip (see `residual`), cracks that grow out of their plane, mixed modes, residual or
 * cold-worked stress, a fastener that fills its hole.
 *
 * @param geometry where the crack sits; lengths mm, whole width, edge distance from the centre of the hole
 * @param factors boundaries that the form does not hold, each a factor on K
 * @param compounded how they act together, by product where nothing is said
 * @returns the form: K per MPa of remote stress in √m at its tips, net section, and the form it goes on as
 * @throws Refusal `growth.geometry-impossible`, `growth.table-not-rising`; `k` also `growth.outside-solution`
 * @see docs/methods/growth.md, stress intensity
 */
export const crackForm = (geometry: Geometry, factors: Factors = [], compounded: Compounded = 'product'): CrackForm =>
  formOf(compound(solutionOf(geometry), factors, compounded));
