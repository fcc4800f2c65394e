import type { teardown } from '../../engine/index.ts';
import { wingJobs, wingLooks } from './wing-looks.ts';
import { ribs, rowsOf } from './wing-rows.ts';

/**
 * The wing of the invented Whimbrel W4 as a structure map: left and right, 65 parts, 142 joins. Nothing in it is real:
 * outlines, counts, times and prices are made up, and so is the order of the kit.
 */
type Part = teardown.StructureInput['parts'][number];
type Side = 'left' | 'right';
export const madeUp = (place: string) => ({ source: 'Invented for demonstration', place, known: 'invented' }) as const;
const t = (low_min: number, likely_min: number, high_min: number) => ({ low_min, likely_min, high_min });

/** A rectangle from root to tip and from nose to tail, on its side of the centre line. */
export const box = (side: Side, y0: number, y1: number, x0: number, x1: number): [number, number][] => {
  const s = side === 'left' ? -1 : 1;
  return [
    [x0, s * y0],
    [x0, s * y1],
    [x1, s * y1],
    [x1, s * y0],
  ];
};

function partsOf(side: Side): Part[] {
  const id = (name: string) => `${side}-${name}`;
  const Side = side === 'left' ? 'Left' : 'Right';
  const part = (
    name: string,
    words: string,
    kind: Part['kind'],
    at: readonly [number, number, number, number],
    level: number,
    off: readonly [number, number, number],
    rest: Partial<Part> = {},
  ): Part => ({
    id: id(name),
    name: `${Side} ${words}`,
    kind,
    side,
    outline: box(side, ...at),
    level,
    take_off: t(...off),
    put_back: t(off[0] * 1.5, off[1] * 1.5, off[2] * 1.5),
    ...rest,
  });
  const off = (...names: string[]) => names.map((n) => `off:${id(n)}`);
  const parts = [
    part('inboard-spar', 'inboard spar', 'spar', [480, 2950, 480, 585], 6, [20, 30, 60], {
      mass_kg: 21,
      persons: 2,
      skill: 'sheet-metal',
      order: {
        code: 'W4-5710 (invented), angles and doublers riveted on',
        price_low_cents: 640_000,
        price_high_cents: 780_000,
        lead_days: { low: 28, likely: 45, high: 90 },
        note: 'Comes undrilled but for pilot holes; the kit is W4-K57 (invented)',
      },
    }),
    part('outboard-spar', 'outboard spar', 'spar', [2600, 5000, 490, 575], 5, [20, 30, 60], {
      mass_kg: 12,
      persons: 2,
      skill: 'sheet-metal',
      order: {
        code: 'W4-5720 (invented)',
        price_low_cents: 310_000,
        price_high_cents: 390_000,
        lead_days: { low: 28, likely: 40, high: 80 },
      },
    }),
    part('rear-spar', 'rear spar', 'spar', [480, 5000, 1130, 1185], 5, [20, 30, 60], {
      mass_kg: 11,
      persons: 2,
      needs: off('flap', 'aileron'),
    }),
    part('tank', 'fuel tank', 'tank', [1500, 2500, 40, 478], 7, [20, 30, 50], {
      mass_kg: 14,
      persons: 2,
      holds_fuel: true,
    }),
    part('nose-inboard', 'inboard nose section', 'nose_section', [480, 1500, 0, 500], 7, [8, 12, 25], {
      mass_kg: 8,
      persons: 2,
    }),
    part('nose-outboard', 'outboard nose section', 'nose_section', [2500, 5000, 0, 505], 7, [8, 15, 30], {
      mass_kg: 13,
      persons: 2,
    }),
    part('tip', 'wing tip', 'fairing', [5000, 5260, 120, 1400], 8, [3, 5, 8], { mass_kg: 3 }),
    part('root-fairing', 'root fairing', 'fairing', [420, 520, 100, 1500], 9, [3, 5, 10]),
    part('upper-skin-inboard', 'inboard upper aft skin', 'skin', [480, 2760, 500, 1160], 8, [10, 20, 40], {
      persons: 2,
      ...(side === 'right' ? { needs: off('walkway-doubler') } : {}),
    }),
    part('upper-skin-outboard', 'outboard upper aft skin', 'skin', [2700, 5000, 500, 1160], 8, [10, 20, 40], {
      persons: 2,
    }),
    part('lower-skin-inboard', 'inboard lower aft skin', 'skin', [480, 2760, 500, 1160], 2, [10, 20, 40], {
      persons: 2,
      face: 'lower',
      needs: off('panel-inboard'),
    }),
    part('lower-skin-outboard', 'outboard lower aft skin', 'skin', [2700, 5000, 500, 1160], 2, [10, 20, 40], {
      persons: 2,
      face: 'lower',
      needs: off('panel-outboard'),
    }),
    part('panel-inboard', 'inboard access panel', 'panel', [1300, 1560, 760, 980], 1, [1, 2, 3], { face: 'lower' }),
    part('panel-outboard', 'outboard access panel', 'panel', [2780, 3040, 640, 900], 1, [1, 2, 3], { face: 'lower' }),
    part('aileron', 'aileron', 'control_surface', [3000, 4980, 1190, 1580], 6, [5, 8, 15], {
      mass_kg: 5,
      persons: 2,
    }),
    part('flap', 'flap', 'control_surface', [520, 2960, 1190, 1590], 6, [5, 8, 15], {
      mass_kg: 6,
      persons: 2,
    }),
    part('aileron-rod', 'aileron rod', 'system', [3500, 3720, 900, 1200], 4, [2, 4, 8]),
    part('flap-rod', 'flap rod', 'system', [470, 760, 900, 1200], 4, [2, 4, 8]),
    part('fuel-line', 'fuel line', 'system', [480, 1500, 420, 460], 4, [5, 10, 20], { holds_fuel: true }),
    part('splice-plate-upper', 'upper splice plate', 'splice', [2600, 2950, 490, 575], 9, [2, 4, 8]),
    part('splice-plate-lower', 'lower splice plate', 'splice', [2600, 2950, 490, 575], 1, [2, 4, 8], { face: 'lower' }),
    part('attach-fitting', 'main attach fitting', 'fitting', [400, 560, 500, 570], 7, [10, 20, 40], {
      skill: 'sheet-metal',
      needs: [`off:${id('inboard-spar')}`],
    }),
    ...ribs.map(({ n, y }) =>
      part(`rib-${n}`, `aft rib ${n}`, 'rib', [y - 12, y + 12, 585, 1130], 4, [5, 10, 20], {
        needs: [
          {
            any: [
              `off:${id(`upper-skin-${y < 2700 ? 'inboard' : 'outboard'}`)}`,
              `off:${id(`lower-skin-${y < 2700 ? 'inboard' : 'outboard'}`)}`,
            ],
            because: 'a rib comes out through an open skin, upper or lower',
          },
        ],
      }),
    ),
  ];
  if (side === 'right')
    return [
      ...parts,
      part('walkway-cover', 'walkway covering', 'panel', [480, 1180, 640, 1080], 10, [10, 15, 30]),
      part('walkway-doubler', 'walkway doubler', 'doubler', [480, 1180, 620, 1100], 9, [5, 10, 20], {
        skill: 'sheet-metal',
      }),
    ];
  return [
    ...parts,
    part('landing-light', 'landing light', 'system', [3300, 3420, 0, 120], 9, [2, 4, 8]),
    part('pitot', 'pitot tube', 'system', [3900, 3930, 300, 460], 1, [2, 4, 8], { face: 'lower' }),
  ];
}

const supportsOf = (side: Side): NonNullable<teardown.StructureInput['supports']> => [
  {
    id: `${side}-trestles`,
    name: `Trestles under the ${side} wing`,
    side,
    persons: 2,
    set_up: t(10, 15, 30),
  },
  {
    id: `${side}-cradle`,
    name: `Cradle that holds the ${side} outboard wing`,
    side,
    persons: 2,
    set_up: t(15, 25, 45),
    needs: [`support:${side}-trestles`],
  },
  {
    id: `${side}-jig`,
    name: `Wing jig, ${side} hand`,
    side,
    persons: 2,
    skill: 'jig',
    set_up: t(60, 90, 150),
    jig: 'wing-jig',
  },
];

export const structureExample: teardown.StructureInput = {
  sparwright: 'structure/1',
  title: 'Whimbrel W4 wing',
  models: ['W4', 'W4-T'],
  invented: true,
  from: madeUp('the whole map'),
  parts: [
    {
      id: 'fuselage',
      name: 'Fuselage',
      kind: 'other',
      side: 'both',
      outline: [
        [-900, -420],
        [-900, 420],
        [2300, 420],
        [2300, -420],
      ],
      level: 3,
      stays: true,
      take_off: t(0, 0, 0),
      put_back: t(0, 0, 0),
    },
    ...partsOf('left'),
    ...partsOf('right'),
  ],
  joins: [...rowsOf('left'), ...rowsOf('right')],
  supports: [...supportsOf('left'), ...supportsOf('right')],
  looks: [...wingLooks('left'), ...wingLooks('right')],
  jobs: [...wingJobs('left'), ...wingJobs('right')],
  stated: (['left', 'right'] as const).map((side) => ({
    name: `Spar kit W4-K57 (invented), ${side} wing`,
    only_if: `${side}-inboard-spar`,
    steps: [
      `support:${side}-cradle`,
      `off:${side}-tank`,
      `off:${side}-nose-inboard`,
      `off:${side}-nose-outboard`,
      `open:${side}-row-splice-lower`,
      `open:${side}-row-splice-upper`,
    ],
    from: madeUp('instruction of the kit, section 4'),
  })),
  each: {
    solid_rivet: {
      open: t(0.6, 0.9, 1.8),
      clip: t(0.15, 0.2, 0.4),
      drill: t(0.4, 0.6, 1.1),
      deburr: t(0.25, 0.35, 0.6),
      close: t(0.6, 0.9, 1.6),
    },
    blind_rivet: {
      open: t(0.5, 0.7, 1.2),
      clip: t(0.15, 0.2, 0.4),
      drill: t(0.4, 0.6, 1.1),
      deburr: t(0.25, 0.35, 0.6),
      close: t(0.3, 0.4, 0.8),
    },
    bolt: { open: t(4, 8, 30), clip: t(0.5, 1, 2), drill: t(4, 6, 12), deburr: t(0.5, 1, 2), close: t(5, 8, 15) },
    screw: { open: t(0.2, 0.35, 1.4), clip: t(0.1, 0.15, 0.3), close: t(0.25, 0.35, 0.7) },
    clamp: { open: t(2, 3, 8), close: t(3, 4, 8) },
  },
  coating: {
    clean_each_join: t(4, 6, 12),
    convert: t(30, 45, 90),
    prime: t(40, 60, 100),
    dry_h: 12,
    materials: [
      { name: 'Conversion coating', amount: 0.5, unit: 'litre' },
      { name: 'Epoxy primer', amount: 0.75, unit: 'litre' },
    ],
    from: { source: 'common practice of the trade; times invented for demonstration', known: 'invented' },
  },
};
