import type { Day } from '../engine/index.ts';
import { capital, count, datesInWords, day as dayWords } from './display.ts';
import type { Block, Cell, Sheet } from './model.ts';
import { type Assessment, dueAtWords, isOpen, partName, standingCell } from './standing.ts';

/** A letter kept by then: what it printed, and what this program computes from the same papers today. */
export interface KeptLetter {
  readonly number: string;
  readonly directive: string;
  readonly day: Day;
  readonly href: string;
  readonly program: string;
  readonly entry: number;
  readonly printed: readonly Assessment[];
  /** Null where this program could not compute it again; the sentence says why. */
  readonly now: readonly Assessment[] | { readonly because: string };
}
export interface AsKnown {
  /** The last entry that counts. */
  readonly known: number;
  readonly on: Day | null;
  readonly program: string;
  readonly letters: readonly KeptLetter[];
  readonly later: readonly {
    readonly number: number;
    readonly day: string;
    readonly kind: string;
    readonly says: string;
    readonly recorded: string;
  }[];
  readonly names: (id: string) => string;
}

const text = (s: string, small?: string): Cell => ({ is: 'text', text: s, ...(small ? { small } : {}) });
export const knownWords = (known: number, on: Day | null): string =>
  `${on ? `As known on ${dayWords(on)}` : 'As known then'}: entries up to ${known}`;

/** The page as it was with the papers then known: says so first, then the letters of that time, then what came later. */
export function asKnownSheet(sheet: Sheet, k: AsKnown): Sheet {
  const words = knownWords(k.known, k.on);
  const [aircraft, ...others] = sheet.titleBlock.fields;
  const field = { label: k.on ? `As known on ${dayWords(k.on)}` : 'As known then', value: `entries up to ${k.known}` };
  return {
    ...sheet,
    titleBlock: { fields: [...(aircraft ? [aircraft] : []), field, ...others] },
    warnings: [
      `${words}. Everything on this page is computed with those papers and the directives adopted by then, not with what is known now.`,
      ...k.letters.flatMap((l) => differs(l, k)),
      ...sheet.warnings,
    ],
    blocks: [...sheet.blocks, ...(k.letters.length ? [lettersBlock(k)] : []), laterBlock(k)],
    number: `entry ${k.known}`,
  };
}

const printedOf = (a: Assessment): string => {
  const cell = standingCell(a);
  const standing = cell.is === 'standing' ? [cell.text, cell.small].filter(Boolean).join(', ') : '';
  return isOpen(a) && !a.notComputed ? `${standing}, due ${dueAtWords(a.treatAs)}` : standing;
};
const keyOf = (a: Assessment): string => `${a.subject}|${a.directive}|${a.issue}|${a.action.id}`;

/** Where the same papers give something else today than the letter printed, the page says so in words. */
function differs(l: KeptLetter, k: AsKnown): string[] {
  if ('because' in l.now)
    return [
      `Letter ${l.number} (program version ${l.program}) cannot be computed again from its papers: ${l.now.because}.`,
    ];
  const now = new Map(l.now.map((a) => [keyOf(a), printedOf(a)]));
  const other = l.printed.filter((a) => now.get(keyOf(a)) !== printedOf(a));
  const [first] = other;
  if (!first) return [];
  const says = now.get(keyOf(first)) ?? 'nothing';
  return [
    `Letter ${l.number} (program version ${l.program}) printed for ${k.names(first.subject)}, ${first.directive} ${first.action.title.toLowerCase()}: ${printedOf(first)}. Program version ${k.program} computes from the same papers: ${says}.${other.length > 1 ? ` ${capital(count(other.length - 1, 'more figure'))} of it differ too.` : ''}`,
  ];
}
function lettersBlock(k: AsKnown): Block {
  return {
    block: 'table',
    title: 'Letters kept by then, with what they printed',
    columns: [
      { key: 'letter', title: 'Letter', align: 'left' },
      { key: 'day', title: 'Day', align: 'right' },
      { key: 'part', title: 'Part', align: 'left' },
      { key: 'printed', title: 'Printed', align: 'left' },
      { key: 'program', title: 'Program version', align: 'left' },
    ],
    rows: k.letters.flatMap((l) =>
      (l.printed.length ? l.printed : [null]).map((a, i) => ({
        id: `${l.number}:${i}`,
        cells: {
          letter: { is: 'link', text: `${l.number} on ${l.directive}`, href: l.href },
          day: { is: 'day', day: l.day, text: dayWords(l.day) },
          part: a ? text(capital(k.names(a.subject)), a.action.title) : { is: 'nothing' },
          printed: text(a ? printedOf(a) : 'no part is affected'),
          program: text(l.program, `entry ${l.entry}`),
        } as Record<string, Cell>,
      })),
    ),
    empty: '',
  };
}
function laterBlock(k: AsKnown): Block {
  return {
    block: 'table',
    title: 'Came later, and is not counted here',
    columns: [
      { key: 'entry', title: 'Entry', align: 'right' },
      { key: 'recorded', title: 'Recorded', align: 'left' },
      { key: 'day', title: 'Day', align: 'left' },
      { key: 'what', title: 'What it says', align: 'left' },
    ],
    rows: k.later.map((e) => ({
      id: String(e.number),
      cells: {
        entry: { is: 'quantity', value: e.number, unit: '', places: 0, text: String(e.number) },
        recorded: text(e.recorded),
        day: text(datesInWords(e.day)),
        what: text(capital(e.kind), e.says),
      },
    })),
    empty: 'Nothing was recorded for this aircraft since.',
  };
}
export const namesOf =
  (things: ReadonlyMap<string, Parameters<typeof partName>[0]>) =>
  (id: string): string =>
    partName(things.get(id), id);
