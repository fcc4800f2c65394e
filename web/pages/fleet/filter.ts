import type { Cell, Zone } from '../../../sheets/model.ts';
import { type Row, WORST_FIRST } from '../../parts/order.ts';
import type { Wanted } from './wanted.ts';

/** A row made ready once, so that a key press only compares. */
export interface Ready {
  readonly row: Row;
  readonly words: string;
  readonly standing: string;
  readonly type: string;
  readonly base: string;
  readonly days: readonly string[];
  readonly paper: boolean;
}

const wordsOf = (cell: Cell): string => {
  if (cell.is === 'nothing') return '';
  return 'small' in cell && cell.small ? `${cell.text} ${cell.small}` : cell.text;
};
/** As a person types it: small letters, ordinary spaces. */
const plain = (text: string): string =>
  text
    .toLowerCase()
    .replaceAll(/[\s\u00a0\u2009\u202f]+/g, ' ')
    .trim();
const textOf = (cell: Cell | undefined): string => (cell && cell.is !== 'nothing' ? cell.text : '');

export function readyOf(row: Row): Ready {
  const { standing, type, base, about, paper } = row.cells;
  return {
    row,
    words: plain([row.words ?? '', ...Object.values(row.cells).map(wordsOf)].join(' ')),
    standing: standing?.is === 'standing' ? standing.worst : '',
    type: textOf(type),
    base: textOf(base),
    days: row.days ?? (about?.is === 'day' ? [about.day] : []),
    paper: textOf(paper) !== '',
  };
}

const within = (days: readonly string[], from: string | null, to: string | null): boolean =>
  days.some((d) => (!from || d >= from) && (!to || d <= to));

/** A test of one row for what is wanted. A stretch that the picture does not hold leaves nothing out. */
export function testFor(wanted: Wanted, zones: readonly Zone[]): (r: Ready) => boolean {
  const words = plain(wanted.search).split(' ').filter(Boolean);
  const zone = zones.find((z) => z.key === wanted.due);
  const dated = wanted.from !== '' || wanted.to !== '';
  return (r) =>
    (wanted.standing === '' || r.standing === wanted.standing) &&
    (wanted.type === '' || r.type === wanted.type) &&
    (wanted.base === '' || r.base === wanted.base) &&
    (!wanted.paper || r.paper) &&
    (!zone || within(r.days, zone.from, zone.to)) &&
    (!dated || within(r.days, wanted.from, wanted.to)) &&
    words.every((w) => r.words.includes(w));
}

/** Words that are present, each once: standings worst first, the others by their letters. */
export function presentIn(all: readonly Ready[], of: 'standing' | 'type' | 'base'): readonly string[] {
  const found = [...new Set(all.map((r) => r[of]))].filter(Boolean);
  if (of !== 'standing') return found.sort((a, b) => a.localeCompare(b, 'en', { numeric: true }));
  const rank = (s: string) => (WORST_FIRST as readonly string[]).indexOf(s);
  return found.sort((a, b) => rank(a) - rank(b));
}

const MUST_BE_SAID = ['overdue', 'due'] as const;
/** What a filter hides although it bites now: never in silence. "3 overdue and 2 due" */
export function hiddenWords(all: readonly Ready[], shown: readonly Ready[]): string {
  const seen = new Set(shown);
  const hidden = all.filter((r) => !seen.has(r));
  return MUST_BE_SAID.map((s) => ({ s, n: hidden.filter((r) => r.standing === s).length }))
    .filter(({ n }) => n > 0)
    .map(({ s, n }) => `${n} ${s}`)
    .join(' and ');
}
