import type { Bounds, usage } from '../../engine/index.ts';
import { number } from '../display.ts';
import { hoursCell, measured, quantity, smallCell, timesCell, type Units, words } from '../measure.ts';
import type { Cell, Column, KeyValueBlock, TableBlock } from '../model.ts';
import { KNOWN_WORDS } from '../sources.ts';
import { titleOfUse } from './words.ts';

type Answer = usage.UsageAnswer;
const right = (key: string, title: string, unit?: string): Column => ({
  key,
  title,
  align: 'right',
  ...(unit ? { unit } : {}),
});
const left = (key: string, title: string): Column => ({ key, title, align: 'left' });

/** An hour's harm is too small a figure to read. */
const inThousand = (perHour: number | null): number | null => (perHour === null ? null : 1000 * perHour);

/** Every use beside the others; lives only where a stress with a source is at hand. */
export function usesTable(a: Answer): TableBlock {
  const lives = a.gives === 'lives';
  const drawn = a.uses.some((u) => u.sequencePerHour !== null);
  return {
    block: 'table',
    title: 'The uses beside each other',
    columns: [
      left('use', 'Use'),
      right('counts', 'An hour counts, times'),
      right('across', 'Over all that was tried'),
      ...(lives
        ? [
            right('safe', 'Safe life by this estimate', 'h'),
            right('mean', 'Mean life', 'h'),
            right('damage', 'Damage', 'in 1\u202f000 h'),
            ...(drawn ? [right('sequence', 'Damage counted flight by flight', 'in 1\u202f000 h')] : []),
          ]
        : []),
      right('cycles', 'Cycles an hour'),
      left('known', 'How well it is known'),
    ],
    rows: a.uses.map((u) => ({
      id: u.use,
      cells: {
        use: words(u.title, u.use === a.reference ? 'the others are held against it' : undefined),
        counts: timesCell(u.ratio),
        across: timesCell(u.ratioAcross),
        ...(lives
          ? {
              safe: hoursCell(u.safeLife_h),
              mean: hoursCell(u.meanLife_h),
              damage: smallCell(inThousand(u.perHour)),
              sequence: smallCell(inThousand(u.sequencePerHour)),
            }
          : {}),
        cycles: smallCell(u.cyclesPerHour),
        known: words(KNOWN_WORDS[u.known]),
      },
    })),
    empty: 'No use is described.',
  };
}

/** What the hours flown count as, use by use. */
export function equivalentTable(a: Answer): TableBlock[] {
  const e = a.equivalent;
  if (!e || a.gives === 'ratios') return [];
  const sum = (end: 'low' | 'high') => e.byUse.reduce((total, u) => total + u.flown_h[end], 0);
  const settled = sum('low') < e.flown_h.low - 0.05 || sum('high') > e.flown_h.high + 0.05;
  const row = (id: string, use: string, small: string | undefined, flown: Bounds, counts: Cell, h: Bounds) => ({
    id,
    cells: { use: words(use, small), flown: hoursCell(flown), ratio: counts, counts: hoursCell(h) },
  });
  return [
    {
      block: 'table',
      title: 'What the hours flown count as',
      columns: [
        left('use', 'Use'),
        right('flown', 'Flown', 'h'),
        right('ratio', 'An hour counts, times'),
        right('counts', `Counts as ${titleOfUse(a, a.reference).toLowerCase()}`, 'h'),
      ],
      rows: [
        ...e.byUse.map((u) =>
          row(
            u.use,
            titleOfUse(a, u.use),
            u.assumed ? 'no loads of its own: as the hardest use' : undefined,
            u.flown_h,
            timesCell(u.ratio),
            {
              low: u.flown_h.low * u.ratio,
              high: u.flown_h.high * u.ratio,
            },
          ),
        ),
        row(
          'together',
          'Together',
          settled ? 'the sum is settled better than its parts' : undefined,
          e.flown_h,
          { is: 'nothing' },
          e.equivalent_h,
        ),
      ],
      empty: 'No hours are known.',
    },
  ];
}

const MOST_COLUMNS = 7;
/** The ratios under each assumption that was tried. */
export function sensitivityTable(a: Answer): TableBlock[] {
  if (!a.sensitivity.length || a.uses.length < 2) return [];
  const others = a.uses.filter((u) => u.use !== a.reference);
  const ratio = (v: number | null | undefined) =>
    v === null || v === undefined ? words('no damage by the reference use') : timesCell(v);
  const wide = others.length <= MOST_COLUMNS;
  const title = 'What changes it: an hour counts, times';
  const rows = a.sensitivity.map((s, i) => ({
    id: String(i),
    tried: s.tried,
    of: new Map(s.ratios.map((r) => [r.use, r.ratio])),
  }));
  return [
    wide
      ? {
          block: 'table',
          title,
          columns: [left('tried', 'Tried'), ...others.map((u) => right(u.use, u.title))],
          rows: rows.map((r) => ({
            id: r.id,
            cells: { tried: words(r.tried), ...Object.fromEntries(others.map((u) => [u.use, ratio(r.of.get(u.use))])) },
          })),
          empty: '',
        }
      : {
          block: 'table',
          title,
          columns: [left('tried', 'Tried'), left('use', 'Use'), right('ratio', 'Counts, times')],
          rows: rows.flatMap((r) =>
            others.map((u) => ({
              id: `${r.id} ${u.use}`,
              cells: { tried: words(r.tried), use: words(u.title), ratio: ratio(r.of.get(u.use)) },
            })),
          ),
          empty: '',
        },
  ];
}

/** The place, its stresses, and what the lives are made with. */
export function placeBlock(a: Answer, document: usage.UsageDocument | undefined, units: Units): KeyValueBlock {
  const s = document?.place.stress;
  const stress = (v: number) => words(measured(v, 'stress', units));
  const ground = (g: { ground_at_1g_MPa: number; ground_per_g_MPa?: number | undefined }) => [
    { key: 'Stress on the ground', cell: stress(g.ground_at_1g_MPa) },
    { key: 'Stress for each g on the ground', cell: stress(g.ground_per_g_MPa ?? g.ground_at_1g_MPa) },
  ];
  const pairs: KeyValueBlock['pairs'] = [
    ...(document
      ? [
          { key: 'Place', cell: words(document.place.name) },
          { key: 'Aeroplane', cell: words(document.aeroplane.name) },
          {
            key: 'Limit load factors',
            cell: words(`${number(document.aeroplane.limit_up, 2)} and ${number(document.aeroplane.limit_down, 2)} g`),
          },
        ]
      : []),
    ...(s?.as === 'per_g'
      ? [
          { key: 'Stress in level flight', cell: stress(s.at_1g_MPa) },
          { key: 'Stress for each g', cell: stress(s.per_g_MPa ?? s.at_1g_MPa) },
          ...ground(s),
        ]
      : []),
    ...(s?.as === 'line'
      ? [
          {
            key: 'Stress, by a line',
            cell: words(
              `${measured(Math.min(...s.points.map((p) => p.stress_MPa)), 'stress', units)} to ${measured(Math.max(...s.points.map((p) => p.stress_MPa)), 'stress', units)}`,
            ),
          },
          ...ground(s),
        ]
      : []),
    ...(a.gives === 'ratios' ? [{ key: 'Stress per g', cell: words('not known with a source') }] : []),
    ...(s?.as === 'unknown'
      ? [{ key: 'Stress on the ground', cell: words(`${number(s.ground_share, 2)} times that of level flight`) }]
      : []),
    { key: 'S-N curve', cell: words(a.curve.name) },
    ...(a.gives === 'lives'
      ? [{ key: 'Scatter factor', cell: quantity(a.scatterFactor.value, '', a.scatterFactor.value % 1 ? 2 : 0) }]
      : []),
  ];
  return { block: 'key-value', title: 'The place and its stress', pairs };
}
