import type { growth } from '../../engine/index.ts';
import { hoursLeft, number } from '../display.ts';
import { hoursCell, measured, percentCell, quantity, timesCell, type Units, words } from '../measure.ts';
import type { Cell, Column, KeyValueBlock, TableBlock } from '../model.ts';
import { downward, noLongerAhead, ofUseToday, type Shown, shownProgramme } from './in-force.ts';
import { ENDS, INTERACTIONS, LAW_WORDS, percent, shareOfLives, sizeWords, titleOfUse } from './words.ts';

type Answer = growth.GrowthAnswer;
const left = (key: string, title: string): Column => ({ key, title, align: 'left' });
const right = (key: string, title: string, unit?: string): Column => ({
  key,
  title,
  align: 'right',
  ...(unit ? { unit } : {}),
});
const lookCell = (hours: number | null): Cell => (hours === null ? hoursCell(null) : hoursCell(...downward(hours)));
/** Hours with the directive that cuts them, where one does. */
function capped({ hours, by }: Shown): Cell {
  const cell = lookCell(hours);
  return by === null || cell.is !== 'quantity' ? cell : { ...cell, small: `${by}, in force` };
}

/** A first look projected back from today says nothing once it has passed. */
function firstLook(a: Answer, first: Shown): Cell {
  const past = noLongerAhead(a, first);
  return past ? words(past.said, past.by === null ? 'by this estimate' : `${past.by}, in force`) : capped(first);
}

/** What is in force first, then the looks that come of both. An estimate is never shown as longer. */
export function programmeTable(a: Answer): TableBlock[] {
  if (a.gives === 'ratios') return [];
  const p = shownProgramme(a);
  const rows: TableBlock['rows'][number][] = a.inForce.map((i, n) => ({
    id: `in-force-${n}`,
    cells: {
      what: words(`${i.name}, in force`, i.reference),
      first: lookCell(i.first_at_h),
      repeat: lookCell(i.repeat_h),
      left: i.left_h === null ? words('') : leftHours(i.left_h),
    },
  }));
  if (p)
    rows.push({
      id: 'shown',
      cells: {
        what: words(
          'This estimate',
          a.inForce.length ? 'never longer than what is in force; it approves nothing' : 'it approves nothing',
        ),
        first: capped(p.first),
        repeat: capped(p.repeat),
        left: leftCell(a),
      },
    });
  return [
    {
      block: 'table',
      title: 'When to look',
      columns: [
        left('what', 'Asked by'),
        right('first', 'First look at', 'h'),
        right('repeat', 'Then every', 'h'),
        right('left', 'Left', 'h'),
      ],
      rows,
      empty: 'No directive in force was named, and no interval could be made.',
    },
  ];
}
/** The estimate's own, worse side first, and never more than a directive leaves. */
function leftCell(a: Answer): Cell {
  if (!a.left_h) return words('');
  const limits = a.inForce.flatMap((i) => (i.left_h === null ? [] : [i.left_h]));
  const most = Math.min(...limits, Number.POSITIVE_INFINITY);
  const [low, high] = [Math.min(a.left_h.low, most), Math.min(a.left_h.high, most)];
  return hoursLeft(low) === hoursLeft(high) ? leftHours(low) : hoursCell({ low, high });
}
const leftHours = (h: number): Cell => ({ is: 'quantity', value: h, unit: 'h', places: 0, text: hoursLeft(h) });

/** The same crack where all hours are of one use. */
export function byUseTable(a: Answer): TableBlock[] {
  if (!a.byUse.length) return [];
  const hours = a.gives === 'hours';
  return [
    {
      block: 'table',
      title: 'Under another use',
      columns: [
        left('use', 'All of it as'),
        right('ratio', 'Grows, times as fast'),
        right('across', 'Over the exponents tried'),
        ...(hours
          ? [
              right('critical', 'First flaw to critical', 'h'),
              right('detectable', 'From what a look can find', 'h'),
              right('first', 'First look at', 'h'),
              right('repeat', 'Then every', 'h'),
            ]
          : []),
      ],
      rows: a.byUse.map((u) => {
        const p = hours && u.programme ? ofUseToday(a, u.programme) : null;
        return {
          id: u.use,
          cells: {
            use: words(titleOfUse(a, u.use), u.use === a.reference ? 'the others are held against it' : undefined),
            ratio: timesCell(u.ratio),
            across: timesCell(u.ratioAcross),
            ...(hours
              ? {
                  critical: hoursCell(u.firstToCritical_h),
                  detectable: hoursCell(u.detectableToCritical_h),
                  first: p ? firstLook(a, p.first) : words(''),
                  repeat: p ? capped(p.repeat) : words(''),
                }
              : {}),
          },
        };
      }),
      empty: 'No use is described.',
    },
  ];
}

const percents = (low: number, high: number): string => `${percent(low)} to ${percent(high)}`;

/** Lives that end early, and cracks that pass their critical size unseen. */
export function chanceTables(a: Answer): TableBlock[] {
  const c = a.chance;
  if (!c || a.gives === 'ratios') return [];
  return [
    {
      block: 'table',
      title: 'How the lives scatter',
      columns: [
        left('share', 'Lives that end by'),
        right('hours', 'Hours', 'h'),
        right('sampling', 'As far as this many draws tell', 'h'),
      ],
      rows: c.percentiles.map((p) => ({
        id: String(p.share),
        cells: { share: words(shareOfLives(p.share)), hours: hoursCell(p.hours), sampling: hoursCell(p.sampling) },
      })),
      empty: 'No life was drawn.',
    },
    {
      block: 'table',
      title: 'Chance that a crack is critical before the look, and was never found',
      columns: [
        right('look', 'Look'),
        right('hours', 'At', 'h'),
        right('chance', 'Chance'),
        right('sampling', 'As far as this many draws tell'),
      ],
      rows: c.passed.map((p) => ({
        id: String(p.look),
        cells: {
          look: quantity(p.look, ''),
          hours: hoursCell(p.hours),
          chance: percentCell(p.chance, p.chance === 0 ? `none of ${number(c.lives)}` : percent(p.chance)),
          sampling: percentCell(p.sampling, percents(p.sampling.low, p.sampling.high)),
        },
      })),
      empty: 'No look was asked about.',
    },
  ];
}

/** What was put in, as the reader's units have it. */
export function inputsBlock(a: Answer, units: Units): KeyValueBlock {
  const hours = a.gives === 'hours';
  const size = (s: growth.CrackSize) => words(sizeWords(s, units));
  return {
    block: 'key-value',
    title: 'What went in',
    pairs: [
      { key: 'Place', cell: words(a.place) },
      { key: 'First flaw', cell: size(a.first) },
      { key: 'A look can find', cell: words(sizeWords(a.detectable, units), a.method) },
      ...(a.critical
        ? [
            { key: 'Critical size', cell: words(sizeWords(a.critical.size, units), ENDS[a.critical.by]) },
            { key: 'Stress at limit load', cell: words(measured(a.critical.limit_MPa, 'stress', units)) },
          ]
        : []),
      { key: 'Material', cell: words(a.material.name, `growth by ${LAW_WORDS[a.material.law] ?? a.material.law}`) },
      { key: 'Yield', cell: words(measured(a.material.yield_MPa, 'stress', units)) },
      { key: 'Toughness at this thickness', cell: measuredWords(a.material.toughness_MPa_sqrt_m, units) },
      ...(hours && a.firstToCritical_h !== null
        ? [{ key: 'First flaw to critical', cell: words(`${number(a.firstToCritical_h)} h by this estimate`) }]
        : []),
      ...(hours && a.detectableToCritical_h !== null
        ? [
            {
              key: 'From what a look can find to critical',
              cell: words(`${number(a.detectableToCritical_h)} h by this estimate`),
            },
          ]
        : []),
      ...(hours && a.interaction.as !== 'none' && a.interaction.withIt_h !== null
        ? [
            {
              key: `With ${INTERACTIONS[a.interaction.as]}`,
              cell: words(
                `${a.interaction.withItEnded === 'critical' ? '' : 'more than '}${number(a.interaction.withIt_h)} h`,
                'shown beside; the looks rest on the life without it',
              ),
            },
          ]
        : []),
      ...(a.chance?.detection
        ? [
            {
              key: 'Found every other time, and nine times in ten',
              cell: words(
                `${measured(a.chance.detection.a50_mm, 'length', units)} and ${measured(a.chance.detection.a90_mm, 'length', units)}`,
                `never more often than ${percent(a.chance.detection.most)}`,
              ),
            },
          ]
        : []),
    ],
  };
}
const measuredWords = (k: number, units: Units): Cell =>
  Number.isFinite(k) ? words(measured(k, 'toughness', units)) : { is: 'nothing' };
