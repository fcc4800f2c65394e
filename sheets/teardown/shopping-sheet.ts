import type { teardown } from '../../engine/index.ts';
import { count, number } from '../display.ts';
import { f, t } from '../frame.ts';
import { inUnits, quantity, type Units, unitOf, words } from '../measure.ts';
import type { Cell, Sheet, Span } from '../model.ts';
import { shownSteps } from '../working.ts';
import { namesOf, targetWords } from './facts.ts';
import type { TeardownSheetInput } from './input.ts';
import { teardownFrame } from './sheet.ts';
import { left, right } from './tables.ts';
import { aboutSum, joinKind } from './words.ts';

type Line = teardown.ShoppingLine;
const KINDS: Partial<Record<Line['kind'], string>> = { consumable: 'consumable', tool: 'tool', part: 'part' };
const kindOf = (l: Line): string => KINDS[l.kind] ?? joinKind(l.kind as teardown.FastenerKind, 2);
const nothing: Cell = { is: 'nothing' };

/** What is bought for a job: fasteners by code and length with spares, consumables, tools, parts. */
export function shoppingSheet(input: TeardownSheetInput): Sheet {
  const { document: d, answer, units = 'mm' } = input;
  const { lines, tools, warnings } = answer.value.shopping;
  const { name } = namesOf(d.map);
  const currency = d.floor?.currency;
  return {
    ...teardownFrame(input, 'What is to be bought?'),
    answer: sentence(d, lines),
    because: unpriced(lines, currency),
    blocks: [
      {
        block: 'table',
        title: 'To buy',
        wide: true,
        columns: [
          left('code', 'Code'),
          left('what', 'What'),
          right('length', 'Length', unitOf('length', units)),
          right('count', 'Needed'),
          right('spares', 'Spares'),
          right('buy', 'To buy'),
          left('unit', 'Unit'),
          right('sum', 'Price', currency),
          right('lead', 'Comes in', 'days'),
          left('where', 'For'),
        ],
        rows: lines.map((l, i) => ({
          id: `${l.code}-${i}`,
          cells: {
            code: words(l.code),
            what: words(l.what, kindOf(l)),
            length: lengthCell(l.length_mm, units),
            count: quantity(l.count, l.unit, wholeOr(l.count)),
            spares: l.spares ? quantity(l.spares, l.unit, wholeOr(l.spares)) : nothing,
            buy: quantity(l.count + l.spares, l.unit, wholeOr(l.count + l.spares)),
            unit: words(l.unit),
            sum: l.cents ? sumCell(l.cents) : words('not priced'),
            lead: l.lead_days === null ? nothing : quantity(l.lead_days, 'days'),
            where: whereCell(l.joins.map(name)),
          },
        })),
        empty: 'Nothing is to be bought.',
      },
      {
        block: 'table',
        title: 'Tools at hand',
        columns: [left('tool', 'Tool')],
        rows: tools.map((tool) => ({ id: tool, cells: { tool: words(tool) } })),
        empty: 'No tool is named on the map.',
      },
    ],
    working: shownSteps(answer.working, units, currency),
    warnings: [...new Set([...answer.warnings, ...warnings])],
  };
}
const wholeOr = (n: number): number => (Number.isInteger(n) ? 0 : 2);
function lengthCell(mm: number | null, units: Units): Cell {
  return mm === null
    ? nothing
    : quantity(inUnits(mm, 'length', units), unitOf('length', units), units === 'mm' ? 1 : 3);
}
function sumCell(b: { low: number; high: number }): Cell {
  const value = { low: Math.round(b.low) / 100, high: Math.round(b.high) / 100 };
  const whole = Number.isInteger(value.low) && Number.isInteger(value.high);
  const cell = quantity(value, '', whole ? 0 : 2);
  return cell.is === 'quantity' ? { ...cell, places: 2 } : cell;
}
const whereCell = (names: readonly string[]): Cell =>
  names.length === 0
    ? nothing
    : words(names[0]!, names.length > 1 ? `and ${number(names.length - 1)} more` : undefined);

function sentence(d: teardown.TeardownDocument, lines: readonly Line[]): Span[] {
  if (!lines.length) return [t(`To ${targetWords(d)} `), f('nothing has to be bought'), t('.')];
  const fasteners = lines.filter((l) => !KINDS[l.kind]);
  const pieces = fasteners.reduce((n, l) => n + l.count + l.spares, 0);
  const sums = lines.flatMap((l) => (l.cents ? [l.cents] : []));
  const sum = { low: sums.reduce((n, b) => n + b.low, 0), high: sums.reduce((n, b) => n + b.high, 0) };
  return [
    t(`To ${targetWords(d)}: `),
    f(count(lines.length, 'line')),
    t(', of them '),
    f(count(pieces, 'fastener')),
    t(` of ${count(fasteners.length, 'code and length', 'codes and lengths')}, spares included`),
    ...(sums.length ? [t('; about '), f(aboutSum(sum, d.floor?.currency ?? ''))] : []),
    t('.'),
  ];
}
function unpriced(lines: readonly Line[], currency: string | undefined): string {
  const none = lines.filter((l) => l.cents === null).length;
  const longest = lines.reduce((n, l) => Math.max(n, l.lead_days ?? 0), 0);
  return [
    none
      ? `${count(none, 'line')} of them ${none === 1 ? 'has' : 'have'} no price${currency ? '' : ': the job names no floor'}.`
      : 'Every line has its price.',
    longest ? `The slowest comes in ${count(longest, 'day')}: order it first.` : '',
  ]
    .filter(Boolean)
    .join(' ');
}
