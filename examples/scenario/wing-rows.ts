import type { teardown } from '../../engine/index.ts';

/** The rows of fasteners of the invented wing. Counts, codes by standard number, grips and needs are made up. */
type Join = teardown.StructureInput['joins'][number];
type Side = 'left' | 'right';
type Line = readonly (readonly [y: number, x: number])[];

export const ribs = [480, 1100, 1800, 2400, 3050, 3700, 4350, 4980].map((y, i) => ({ n: i + 1, y }));
const RIVET = { kind: 'solid_rivet', code: 'MS20470AD4', diameter_mm: 3.175 } as const;
const FLUSH = { kind: 'solid_rivet', code: 'MS20426AD4', diameter_mm: 3.175, head: 'flush' } as const;
const BIG = { kind: 'solid_rivet', code: 'MS20470AD5', diameter_mm: 3.969 } as const;
const SCREW = { kind: 'screw', code: 'MS24694-S', diameter_mm: 4.826, head: 'flush' } as const;

/** Every row of one wing; the right one has a walkway and its doubler, the left one a light and a pitot tube. */
export function rowsOf(side: Side): Join[] {
  const id = (name: string) => `${side}-${name}`;
  const Side = side === 'left' ? 'Left' : 'Right';
  const s = side === 'left' ? -1 : 1;
  const off = (name: string): `off:${string}` => `off:${id(name)}`;
  const row = (
    name: string,
    words: string,
    layers: readonly string[],
    line: Line,
    fasteners: Join['fasteners'],
    rest: Partial<Join> = {},
  ): Join => ({
    id: id(`row-${name}`),
    name: `${Side} ${words}`,
    side,
    layers: layers.map((l) => (l === 'fuselage' ? l : id(l))),
    line: line.map(([y, x]): [number, number] => [x, s * y]),
    fasteners,
    ...rest,
  });
  const riveted = { persons: 2, skill: 'sheet-metal', tools: ['drill motor', 'rivet gun and bucking bar'] };
  const screwed = { tools: ['screwdriver set'] };
  const wrench = { tools: ['wrenches and torque wrench'] };
  const lower = { face: 'lower' } as const;
  const upper = { face: 'upper' } as const;
  const spar = (y: number) => (y < 2700 ? 'inboard-spar' : 'outboard-spar');
  const skin = (face: 'upper' | 'lower', y: number) => `${face}-skin-${y < 2700 ? 'inboard' : 'outboard'}`;

  const attach = (['upper', 'lower'] as const).map((face, i) =>
    row(
      `attach-${face}`,
      `${face} main attach bolts`,
      ['inboard-spar', 'attach-fitting', 'fuselage'],
      [[450 + 20 * i, 530]],
      { kind: 'bolt', count: 2, code: 'NAS6608', diameter_mm: 12.7, grip_mm: 38 },
      { attach: true, needs: [off('root-fairing'), `support:${id('trestles')}`], ...wrench },
    ),
  );
  const nose = (['upper', 'lower'] as const).flatMap((face) => [
    row(
      `nose-inboard-${face}`,
      `${face} row, inboard nose section, skin and cap`,
      ['nose-inboard', `${face}-skin-inboard`, 'inboard-spar'],
      [
        [490, 520],
        [1490, 520],
      ],
      { ...FLUSH, count: 52, grip_mm: 4.4, pitch_mm: 19.5 },
      { ...riveted, face, spoil_chance: 0.02, jig_before_rivets: true, closing_row: true },
    ),
    row(
      `nose-outboard-${face}`,
      `${face} row, outboard nose section, skin and cap`,
      ['nose-outboard', `${face}-skin-outboard`, 'outboard-spar'],
      [
        [2960, 525],
        [4980, 525],
      ],
      { ...FLUSH, count: 84, grip_mm: 3.6, pitch_mm: 24 },
      { ...riveted, face, spoil_chance: 0.02, jig_before_rivets: true, closing_row: true },
    ),
    row(
      `nose-splice-${face}`,
      `${face} doubled row over the splice`,
      ['nose-outboard', `${face}-skin-inboard`, 'inboard-spar', 'outboard-spar'],
      [
        [2620, 525],
        [2940, 525],
      ],
      { ...FLUSH, count: 34, grip_mm: 6.8, rows: 2, pitch_mm: 19 },
      { ...riveted, face, spoil_chance: 0.03, jig_before_rivets: true, closing_row: true },
    ),
    row(
      `skin-tank-${face}`,
      `${face} row in the tank bay, skin and cap`,
      [`${face}-skin-inboard`, 'inboard-spar'],
      [
        [1510, 560],
        [2590, 560],
      ],
      { ...FLUSH, count: 56, grip_mm: 3.6, pitch_mm: 19.5 },
      { ...riveted, face, spoil_chance: 0.02, jig_before_rivets: true, needs: [off('tank')] },
    ),
    row(
      `tank-${face}`,
      `${face} tank screws`,
      ['tank', 'inboard-spar'],
      [
        [1510, 500],
        [2490, 500],
      ],
      { ...SCREW, count: 38, grip_mm: 3.2 },
      { ...screwed, face, spoil_chance: 0.01 },
    ),
    row(
      `splice-${face}`,
      `${face} splice, both caps and plate`,
      [`splice-plate-${face}`, 'inboard-spar', 'outboard-spar'],
      [
        [2620, 545],
        [2930, 545],
      ],
      { ...BIG, count: 32, grip_mm: 9.5, rows: 4, pitch_mm: 38 },
      {
        ...riveted,
        face,
        spoil_chance: 0.05,
        jig_before_rivets: true,
        holes: { pilot: 0, final: 32, elongated: 0, oversize: 0 },
        needs: [
          off('nose-outboard'),
          `support:${id('cradle')}`,
          {
            any: [off('panel-outboard'), [off('upper-skin-outboard')], off('lower-skin-outboard')],
            because: 'the bucking bar reaches the splice from behind through the panel or an open skin',
          },
        ],
        close_needs: [{ any: [off('panel-outboard'), off('upper-skin-outboard'), off('lower-skin-outboard')] }],
      },
    ),
    row(
      `lap-${face}`,
      `${face} skin lap`,
      [`${face}-skin-inboard`, `${face}-skin-outboard`],
      [
        [2730, 590],
        [2730, 1125],
      ],
      { ...FLUSH, count: 28, grip_mm: 1.6, pitch_mm: 19 },
      {
        ...riveted,
        face,
        needs: [{ any: [off('panel-outboard'), off(`${face === 'upper' ? 'lower' : 'upper'}-skin-outboard`)] }],
      },
    ),
    ...(['inboard', 'outboard'] as const).map((part) =>
      row(
        `rear-${face}-${part}`,
        `${face} row, ${part} skin and rear spar`,
        [`${face}-skin-${part}`, 'rear-spar'],
        part === 'inboard'
          ? [
              [490, 1150],
              [2720, 1150],
            ]
          : [
              [2740, 1150],
              [4980, 1150],
            ],
        { ...FLUSH, count: 96, grip_mm: 2, pitch_mm: 23 },
        {
          ...riveted,
          face,
          needs: [{ any: [off('flap'), off('aileron'), off(`${face === 'upper' ? 'lower' : 'upper'}-skin-${part}`)] }],
        },
      ),
    ),
    ...ribs.map(({ n, y }) =>
      row(
        `skin-rib-${n}-${face}`,
        `${face} skin and rib ${n}`,
        [skin(face, y), `rib-${n}`],
        [
          [y, 600],
          [y, 1120],
        ],
        { ...RIVET, count: 26, grip_mm: 1.6, pitch_mm: 20 },
        {
          ...riveted,
          face,
          needs: [
            {
              any: [
                off(`panel-${y < 2700 ? 'inboard' : 'outboard'}`),
                off(skin(face === 'upper' ? 'lower' : 'upper', y)),
              ],
            },
          ],
        },
      ),
    ),
  ]);
  const webs = [
    row(
      'nose-inboard-web',
      'nose ribs 1 and 2 and spar web',
      ['nose-inboard', 'inboard-spar'],
      [
        [560, 490],
        [1420, 490],
      ],
      { ...RIVET, count: 18, grip_mm: 2.4 },
      { ...riveted, needs: [{ any: [off('root-fairing'), off('tank')] }] },
    ),
    row(
      'nose-outboard-web',
      'nose ribs 5 to 8 and spar web',
      ['nose-outboard', 'outboard-spar'],
      [
        [3050, 495],
        [4900, 495],
      ],
      { ...RIVET, count: 30, grip_mm: 2.2 },
      { ...riveted, needs: [off('tip')] },
    ),
    row(
      'splice-web',
      'splice, both webs',
      ['inboard-spar', 'outboard-spar'],
      [
        [2620, 530],
        [2930, 530],
      ],
      { ...BIG, count: 28, grip_mm: 4.2, rows: 4 },
      {
        ...riveted,
        spoil_chance: 0.03,
        jig_before_rivets: true,
        needs: [off('nose-outboard'), `support:${id('cradle')}`],
      },
    ),
    ...ribs.map(({ n, y }) =>
      row(
        `rib-${n}-spar`,
        `rib ${n} and spar web`,
        [spar(y), `rib-${n}`],
        [[y, 585]],
        { ...RIVET, count: y < 2700 ? 10 : 8, grip_mm: 2.4 },
        {
          ...riveted,
          spoil_chance: 0.02,
          needs: [
            {
              any: [
                off(y < 1500 ? 'nose-inboard' : y < 2500 ? 'tank' : 'nose-outboard'),
                off(skin('upper', y)),
                off(skin('lower', y)),
              ],
              because: 'one reaches the spar web from in front, another the rib from behind',
            },
          ],
        },
      ),
    ),
    ...ribs.map(({ n, y }) =>
      row(
        `rib-${n}-rear`,
        `rib ${n} and rear spar`,
        ['rear-spar', `rib-${n}`],
        [[y, 1130]],
        { ...RIVET, count: 6, grip_mm: 2 },
        {
          ...riveted,
          needs: [{ any: [off(y < 2980 ? 'flap' : 'aileron'), off(skin('upper', y)), off(skin('lower', y))] }],
        },
      ),
    ),
  ];
  const screw = (
    name: string,
    words: string,
    layers: readonly string[],
    line: Line,
    count: number,
    rest: Partial<Join> = {},
  ) => row(name, words, layers, line, { ...SCREW, count, grip_mm: 2 }, { ...screwed, ...rest });
  const bolt = (
    name: string,
    words: string,
    layers: readonly string[],
    line: Line,
    count: number,
    rest: Partial<Join> = {},
  ) =>
    row(
      name,
      words,
      layers,
      line,
      { kind: 'bolt', code: 'AN3', diameter_mm: 4.826, count, grip_mm: 9 },
      { ...wrench, ...rest },
    );
  const small = [
    bolt('attach-rear', 'rear attach bolt', ['rear-spar', 'fuselage'], [[450, 1160]], 1, {
      attach: true,
      needs: [off('root-fairing'), `support:${id('trestles')}`],
    }),
    screw(
      'root-fairing',
      'root fairing screws',
      ['root-fairing', 'fuselage'],
      [
        [470, 200],
        [470, 1450],
      ],
      24,
    ),
    screw(
      'tip',
      'wing tip screws',
      ['tip', 'outboard-spar'],
      [
        [5000, 150],
        [5000, 1380],
      ],
      32,
    ),
    screw(
      'panel-inboard',
      'inboard access panel screws',
      ['panel-inboard', 'lower-skin-inboard'],
      [
        [1310, 770],
        [1550, 770],
        [1550, 970],
        [1310, 970],
        [1310, 770],
      ],
      16,
      lower,
    ),
    screw(
      'panel-outboard',
      'outboard access panel screws',
      ['panel-outboard', 'lower-skin-outboard'],
      [
        [2790, 650],
        [3030, 650],
        [3030, 890],
        [2790, 890],
        [2790, 650],
      ],
      18,
      lower,
    ),
    bolt(
      'aileron-hinge',
      'aileron hinge bolts',
      ['aileron', 'rear-spar'],
      [
        [3100, 1190],
        [4900, 1190],
      ],
      3,
    ),
    bolt(
      'flap-hinge',
      'flap hinge bolts',
      ['flap', 'rear-spar'],
      [
        [620, 1190],
        [2860, 1190],
      ],
      3,
    ),
    bolt('aileron-rod', 'aileron rod bolt', ['aileron', 'aileron-rod'], [[3530, 1180]], 1, {
      needs: [off('panel-outboard')],
      ...lower,
    }),
    bolt('aileron-rod-inner', 'aileron rod, bellcrank bolt', ['aileron-rod', 'rib-6'], [[3700, 910]], 1, {
      needs: [off('panel-outboard')],
      ...lower,
    }),
    bolt('flap-rod', 'flap rod bolt', ['flap', 'flap-rod'], [[730, 1180]], 1, {
      needs: [off('panel-inboard')],
      ...lower,
    }),
    bolt('flap-rod-inner', 'flap rod, lever bolt', ['flap-rod', 'rib-1'], [[480, 910]], 1, {
      needs: [off('panel-inboard')],
      ...lower,
    }),
    row(
      'fuel-line',
      'fuel line unions',
      ['fuel-line', 'tank'],
      [[1495, 440]],
      { kind: 'clamp', code: 'AN924', diameter_mm: 12.7, count: 2, grip_mm: 8 },
      { ...wrench, needs: [off('root-fairing')], consumables: [{ name: 'Seal ring, fuel', amount: 2, unit: 'piece' }] },
    ),
    row(
      'fuel-line-clips',
      'fuel line clips',
      ['fuel-line', 'inboard-spar'],
      [
        [600, 460],
        [1400, 460],
      ],
      { kind: 'clamp', code: 'MS21919', diameter_mm: 4.826, count: 4, grip_mm: 3 },
      { ...wrench, needs: [off('root-fairing'), off('nose-inboard')] },
    ),
    bolt(
      'fitting-spar',
      'attach fitting and spar caps',
      ['attach-fitting', 'inboard-spar'],
      [
        [500, 520],
        [550, 550],
      ],
      6,
      { skill: 'sheet-metal', needs: [off('nose-inboard')] },
    ),
  ];
  const own =
    side === 'right'
      ? [
          row(
            'walkway-cover',
            'walkway covering',
            ['walkway-cover', 'upper-skin-inboard'],
            [
              [500, 660],
              [1160, 660],
            ],
            { ...SCREW, count: 20, grip_mm: 1.6 },
            { ...screwed, ...upper },
          ),
          row(
            'walkway-doubler',
            'walkway doubler and skin',
            ['upper-skin-inboard', 'walkway-doubler'],
            [
              [490, 640],
              [1170, 640],
              [1170, 1080],
              [490, 1080],
              [490, 640],
            ],
            { ...FLUSH, count: 88, grip_mm: 2.4, rows: 4 },
            {
              ...riveted,
              ...upper,
              needs: [off('walkway-cover'), { any: [off('panel-inboard'), off('lower-skin-inboard')] }],
            },
          ),
        ]
      : [
          screw(
            'landing-light',
            'landing light screws',
            ['landing-light', 'nose-outboard'],
            [
              [3310, 60],
              [3410, 60],
            ],
            8,
          ),
          screw('pitot', 'pitot tube screws', ['pitot', 'nose-outboard'], [[3915, 380]], 4, {
            needs: [off('panel-outboard')],
            ...lower,
          }),
        ];
  return [...attach, ...nose, ...webs, ...small, ...own];
}
