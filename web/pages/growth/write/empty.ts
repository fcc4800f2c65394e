import type { Table } from '../../../parts/write/json.ts';
import { NO_SOURCE } from '../../../parts/write/source-in.tsx';

export const LOADINGS: Readonly<Record<string, Table>> = {
  usage_basis: { as: 'usage_basis', basis: '', mix: 'as flown' },
  constant: { as: 'constant', from: NO_SOURCE },
  spectrum: { as: 'spectrum', bands: [], from: NO_SOURCE },
  sequence: { as: 'sequence', cycles_MPa: [], from: NO_SOURCE },
};
export const INTERACTIONS: Readonly<Record<string, Table>> = {
  none: { as: 'none' },
  wheeler: { as: 'wheeler', plane: 'stress', from: NO_SOURCE },
  willenborg: { as: 'willenborg', plane: 'stress', from: NO_SOURCE },
};
export const OWN_MATERIAL: Table = {
  name: '',
  law: { law: 'walker', units: 'mm, MPa√m', from: NO_SOURCE },
  yield_MPa: { from: NO_SOURCE },
  toughness: [{ from: NO_SOURCE }],
};
export const NEW_CHANCE: Table = {
  seed: 1,
  lives: 2000,
  growth_rate: { from: NO_SOURCE },
  stress: { from: NO_SOURCE },
  toughness: { from: NO_SOURCE },
};

/** A growth document with nothing in it but what every one has. */
export const emptyGrowth = (): Table => ({
  sparwright: 'growth/1',
  title: '',
  place: '',
  geometry: { shape: 'hole_corner', cracks: 1 },
  material: { library: '', law: 'walker' },
  loading: LOADINGS.usage_basis!,
  interaction: { as: 'none' },
  limit_stress: { from: NO_SOURCE },
  first_flaw: { from: NO_SOURCE },
  detectable: { method: '', from: NO_SOURCE },
  rule: { name: 'half', from: NO_SOURCE },
});
