import type { Provenance } from '../../foundation/provenance.ts';

/** The works that the solutions are taken from, each once. */
const course = (place: string): Provenance => ({
  source: 'Wichita State University AE 737, Mechanics of Damage Tolerance (N. Smith)',
  edition: '2022',
  place,
  known: 'read',
});
const handbook = (place: string): Provenance => ({
  source: 'USAF Damage Tolerant Design Handbook, AFRL-VA-WP-TR-2003-3002',
  edition: '2002',
  place,
  known: 'read',
});

export const PLANE = course('lecture 2, centre and edge cracks');
export const HOLE_THROUGH = course('lecture 2, through cracks at a hole, remote and bearing stress');
export const NEAR_EDGE = handbook('section 11.3, tables 11.3.10 to 11.3.12');
export const LUG = handbook('section 11.3, tables 11.3.10 to 11.3.12, lug');
export const CORNER_HANDBOOK = handbook('section 11.3, table 11.3.12');
export const CORNER_TABLE = handbook('section 11.3, table 11.3.9');
export const THROUGH_BENDING = handbook(
  'section 11.3: plate bending of a centre or edge crack, half the tension factor',
);

const NEWMAN_RAJU_IN = 'lecture 2; cross-read in the handbook AFRL-VA-WP-TR-2003-3002, table 11.3.12';
/** Newman and Raju's equations (NASA TM-83200 and TM-85793), as the course prints them, its misprints put right. */
export const NEWMAN_RAJU = course(NEWMAN_RAJU_IN);
export const NEWMAN_RAJU_RANGE: Provenance = {
  source: 'NASA TM-83200 (Newman and Raju), summary',
  place: 'range of the equations for cracks at a hole',
  known: 'second-hand',
};
const memory = (what: string): Provenance => ({ source: `Newman and Raju, ${what}`, known: 'memory' });
export const WIDTH_RANGE = memory('range of width');
export const SHALLOW_RANGE = memory('range of depth of long shallow surface cracks');
export const SURFACE_BENDING = memory('bending of a surface crack in a plate');
/** Two numbers of the corner crack in a plate, exponent 15 and power 2, are from memory; the course prints 1.5 and 4, which do not join at a = c. */
export const PLATE_CORNER: Provenance = { ...NEWMAN_RAJU, known: 'memory' };
