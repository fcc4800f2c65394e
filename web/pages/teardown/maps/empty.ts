import type { Table } from '../../../parts/write/json.ts';
import { NO_SOURCE } from '../../../parts/write/source-in.tsx';

/** A map with nothing in it but the body that stays. */
export const emptyMap = (): Table => ({
  sparwright: 'structure/1',
  title: '',
  from: NO_SOURCE,
  parts: [
    {
      id: 'fuselage',
      name: 'Fuselage',
      kind: 'other',
      side: 'both',
      outline: [
        [-600, -400],
        [-600, 400],
        [1800, 400],
        [1800, -400],
      ],
      level: 3,
      stays: true,
      take_off: { low_min: 0, likely_min: 0, high_min: 0 },
      put_back: { low_min: 0, likely_min: 0, high_min: 0 },
    },
  ],
  joins: [],
  each: {},
});
