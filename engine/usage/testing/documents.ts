import type { UsageInput } from '../document.ts';
import { readUsage } from '../read.ts';

export const MADE_UP = { source: 'made up for a test', known: 'invented' } as const;
const LEVELS = [0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9];
const rows = LEVELS.map((at) => ({ at, times: 30 * Math.exp(-at / 0.08) }));
export type LoadsInput = UsageInput['uses'][number]['loads'];

/**
 * SYNTHETIC-1 of the reference, made up: E(x) = 30 exp(−x / 0.08) an hour in shares of a limit increment of 2.8, 9 ksi
 * at 1 g, −3 ksi on the ground, flights of 0.75 h, 2024-T3 Kt 2, scatter factor 8.
 */
export const SYNTHETIC_1: UsageInput = {
  sparwright: 'usage/1',
  title: 'SYNTHETIC-1',
  aeroplane: { name: 'none', limit_up: 3.8, limit_down: -1.52, from: MADE_UP },
  uses: [
    {
      use: 'private',
      flight_h: 0.75,
      loads: [
        { as: 'table', load: 'gust', measure: 'share_of_limit', per: 'hour', up: rows, down: rows, from: MADE_UP },
      ],
    },
  ],
  reference_use: 'private',
  place: {
    name: 'a place',
    stress: { as: 'per_g', at_1g_ksi: 9, ground_at_1g_ksi: -3, from: MADE_UP } as never,
  },
  life: { curve: { library: '2024-t3-kt2' }, scatter_factor: { value: 8, from: MADE_UP } },
};

/** The same document with something changed, read. */
export const changed = (over: Partial<Record<keyof UsageInput, unknown>> = {}) =>
  readUsage({ ...SYNTHETIC_1, ...over });
/** One use of these loads, flown at 50 m/s in flights of an hour. */
export const loaded = (loads: unknown, more: object = {}) =>
  changed({ uses: [{ use: 'private', flight_h: 1, speed_m_per_s: 50, loads, ...more }] });
