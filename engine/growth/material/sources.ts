import type { Known, Provenance } from '../../foundation/provenance.ts';

/** Works that the constants of materials come from, once. */
const work =
  (source: string, edition?: string) =>
  (place: string, known: Known): Provenance => ({ source, ...(edition ? { edition } : {}), place, known });

/** [DT737] */
export const course = work('Wichita State University AE 737, Mechanics of Damage Tolerance (N. Smith)', '2022');
/** Constants remembered, not read: they guide, and are marked wherever they appear. */
export const dowling = (place: string) =>
  work('Dowling, Mechanical Behavior of Materials, table of growth constants')(`${place}; not read`, 'memory');
export const remembered = (place: string) => work('From memory, no source at hand')(place, 'memory');
export const callister = work('Callister, Materials Science and Engineering, table B.5');
export const handbook5 = work('MIL-HDBK-5J', 'J');
export const virkler = work('Virkler, Hillberry and Goel, J. Eng. Mater. Technol. 101', '1979');
export const growthNote = work('Growth constants of 7075-T7351 in a second-hand copy');
