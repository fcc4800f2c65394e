import type { Table } from '../../../parts/write/json.ts';
import { NO_SOURCE } from '../../../parts/write/source-in.tsx';

/** What a load of a kind begins with. */
export const LOADS: Readonly<Record<string, Table>> = {
  table: { as: 'table', load: 'manoeuvre', measure: 'increment', per: 'hour', from: NO_SOURCE },
  exponential: {
    as: 'exponential',
    load: 'manoeuvre',
    measure: 'share_of_limit',
    per: 'hour',
    up: {},
    from: NO_SOURCE,
  },
  gust_velocity: { as: 'gust_velocity', per: 'nautical_mile', from: NO_SOURCE },
  turbulence: { as: 'turbulence', segments: [{}], from: NO_SOURCE },
};
export const STRESSES: Readonly<Record<string, Table>> = {
  per_g: { as: 'per_g', from: NO_SOURCE },
  line: { as: 'line', from: NO_SOURCE },
  unknown: { as: 'unknown', from: NO_SOURCE },
};
export const newUse = (n: number): Table => ({ use: n === 1 ? 'private' : '', loads: [] });
export const OWN_CURVE: Table = { name: '', from: NO_SOURCE };

/** A usage document with nothing in it but what every one has. */
export const emptyUsage = (): Table => ({
  sparwright: 'usage/1',
  title: '',
  aeroplane: { name: '', from: NO_SOURCE },
  uses: [newUse(1)],
  reference_use: 'private',
  place: { name: '', stress: STRESSES.per_g! },
  life: { curve: { library: '' }, scatter_factor: { from: NO_SOURCE } },
});
