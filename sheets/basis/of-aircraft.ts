import { hoursLeft, range } from '../display.ts';
import type { Block, Cell, Sheet } from '../model.ts';
import { identity, partName } from '../standing.ts';
import { type BasisWord, NAMED, type PartAnswered } from './model.ts';

export interface OfAircraftInput {
  readonly word: BasisWord;
  readonly shop: string;
  readonly aircraft: string;
  readonly basis: {
    readonly name: string;
    readonly entry: number;
    readonly outline: Readonly<Record<string, unknown>>;
  };
  /** Other kept documents that fit its model. */
  readonly others: readonly OfAircraftInput['basis'][];
  /** Every part that the place lies in, the worst first; the sheet speaks of that one. */
  readonly parts: readonly PartAnswered[];
  /** The mix of uses to come, in words. */
  readonly mix?: string;
  readonly notes: readonly string[];
}
const titleOf = (b: OfAircraftInput['basis']): string => String(b.outline.title ?? b.name);
const nothing: Cell = { is: 'nothing' };

/** A sheet of one part as the page of its aircraft: the other parts beside it, and the documents it may be asked with. */
export function ofAircraft(sheet: Sheet, q: OfAircraftInput): Sheet {
  const base = ['', q.shop, 'aircraft', q.aircraft, q.word].map(encodeURIComponent).join('/');
  const href = (query: Record<string, string>) => `${base}?${new URLSearchParams(query)}`;
  return {
    ...sheet,
    ...(q.word === 'growth'
      ? {
          see: {
            text: 'What is due on this aircraft',
            href: `/${encodeURIComponent(q.shop)}/aircraft/${encodeURIComponent(q.aircraft)}`,
          },
        }
      : {}),
    warnings: [...q.notes, ...sheet.warnings],
    blocks: [...sheet.blocks.slice(0, 1), ...partsBlock(q, href), ...sheet.blocks.slice(1), documentsBlock(q, href)],
    number: `entry ${q.basis.entry}`,
  };
}

function partsBlock(q: OfAircraftInput, href: (query: Record<string, string>) => string): Block[] {
  if (q.parts.length < 2) return [];
  const hours = (b: PartAnswered['flown_h']): Cell =>
    b ? { is: 'quantity', value: b, unit: 'h', places: 1, text: range(b, 1) } : nothing;
  return [
    {
      block: 'table',
      title: 'Every part that the place lies in, the worst first',
      columns: [
        { key: 'part', title: 'Part', align: 'left' },
        { key: 'identity', title: 'Identity', align: 'left' },
        { key: 'flown', title: 'Flown', unit: 'h', align: 'right' },
        ...(q.word === 'usage'
          ? [{ key: 'counts', title: 'Counts as', unit: 'h', align: 'right' as const }]
          : q.parts.some((p) => p.left_h !== null)
            ? [{ key: 'left', title: 'Left to the next look', unit: 'h', align: 'right' as const }]
            : []),
      ],
      rows: q.parts.map(({ part, flown_h, counts_h, left_h }) => ({
        id: part.id,
        cells: {
          part: { is: 'link', text: partName(part), href: href({ part: part.id, basis: q.basis.name }) } as Cell,
          identity: { is: 'text', text: identity(part) } as Cell,
          flown: hours(flown_h),
          counts: hours(counts_h),
          left:
            left_h === null
              ? nothing
              : ({ is: 'quantity', value: left_h, unit: 'h', places: 0, text: hoursLeft(left_h) } as Cell),
        },
      })),
      empty: '',
    },
  ];
}

function documentsBlock(q: OfAircraftInput, href: (query: Record<string, string>) => string): Block {
  const own = ['', q.shop, q.word, q.basis.name].map(encodeURIComponent).join('/');
  return {
    block: 'table',
    title: 'Computed with',
    columns: [
      { key: 'what', title: 'What', align: 'left' },
      { key: 'title', title: 'Which', align: 'left' },
    ],
    rows: [
      {
        id: q.basis.name,
        cells: {
          what: { is: 'text', text: `The shop’s ${NAMED[q.word]}`, small: `entry ${q.basis.entry}` },
          title: { is: 'link', text: titleOf(q.basis), href: own },
        },
      },
      ...(q.mix
        ? [
            {
              id: 'mix',
              cells: { what: { is: 'text', text: 'Flying to come' }, title: { is: 'text', text: q.mix } } as Record<
                string,
                Cell
              >,
            },
          ]
        : []),
      ...q.others.map((b) => ({
        id: b.name,
        cells: {
          what: { is: 'text', text: 'Also fits this aircraft' },
          title: { is: 'link', text: titleOf(b), href: href({ basis: b.name }) },
        } as Record<string, Cell>,
      })),
    ],
    empty: '',
  };
}
