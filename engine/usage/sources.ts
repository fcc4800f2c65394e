import type { Provenance } from '../foundation/provenance.ts';

/** Works that this room rests on, once. */
export const DISCRETE_GUST: Provenance = {
  source: '14 CFR 23.341(c)',
  edition: 'before amendment 64',
  place: 'gust load factor formula',
  known: 'read',
};
export const CONTINUOUS_TURBULENCE: Provenance = {
  source: '14 CFR 25',
  place: 'appendix G, mission analysis',
  known: 'read',
};
export const MISSION_TURBULENCE: Provenance = {
  source: 'MIL-A-8861A type mission analysis',
  place: 'turbulence field parameters by altitude',
  known: 'memory',
};
export const SEA_LEVEL: Provenance = {
  source: 'International Standard Atmosphere',
  place: 'sea level',
  known: 'memory',
};
export const SKELETON: Provenance = {
  source: 'Common practice of safe-life evaluation for small aeroplanes',
  place: 'bands, 1 g scaling, ground-air-ground',
  known: 'memory',
};
export const CYCLE_COUNTING: Provenance = { source: 'ASTM E1049-85', edition: '2017', place: '5.4', known: 'read' };
export const DAMAGE_SUM: Provenance = {
  source: 'Wichita State University AE 737',
  edition: '2022',
  place: 'lectures 14 to 16',
  known: 'read',
};
export const MILES: Provenance = {
  source: 'Equivalent and true airspeed in the standard atmosphere',
  place: 'definition of equivalent airspeed',
  known: 'memory',
};
