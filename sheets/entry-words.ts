import { type Evidence, isDay, record } from '../engine/index.ts';
import { capital, day, EVIDENCE_WORDS, plain } from './display.ts';

/** An entry of the log as a page needs it; `body` as it was recorded. */
export interface LoggedEntry {
  readonly number: number;
  readonly subject: string;
  readonly kind: string;
  readonly day: string;
  readonly order: number;
  readonly body: unknown;
  readonly evidence: string;
  readonly paper?: unknown;
  readonly note?: string | undefined;
  readonly replaces?: number | undefined;
  readonly recordedAt: string;
  readonly recordedBy: string;
}
type Fields = Readonly<Record<string, unknown>>;

const KIND_WORDS: Readonly<Record<string, string>> = {
  permit: 'permit to fly',
  aircraft: 'aircraft opened',
  part: 'part opened',
  opening: 'life before this record',
  attribute: 'attribute',
  fitment: 'part fitted',
  removal: 'part removed',
  meter: 'meter fitted',
  reading: 'reading',
  flights: 'flying',
  use: 'use',
  gap: 'no paper',
  inspection: 'inspection',
  ruling: 'ruling on a wording',
  event: 'event',
  kit: 'kit',
  repair: 'repair',
  accomplished: 'action done',
  alternative: 'alternative means',
  revocation: 'alternative revoked',
  seen: 'seen on the aircraft',
  list_checked: 'list of directives checked',
};
const OTHER_WORDS: Readonly<Record<string, string>> = {
  page: 'page of a book',
  letter: 'letter kept',
  request: 'asked of the owner',
  settings: 'settings',
  mapping: 'columns of a file',
};
export const kindWords = (kind: string): string => KIND_WORDS[kind] ?? OTHER_WORDS[kind] ?? plain(kind);
export const KINDS: readonly { readonly kind: string; readonly words: string }[] = record.ENTRY_KINDS.map((kind) => ({
  kind,
  words: kindWords(kind),
}));
const HIDDEN = ['photograph_sha256', 'pdf_sha256', 'sha256', 'media_type', 'answers', 'program', 'known_to'];
const UNITS: Readonly<Record<string, string>> = {
  total_h: 'total',
  shows_h: 'shows',
  hours_h: '',
  shows_landings: 'shows',
  landings: '',
  size_mm: 'size',
  rolls_over_at_h: 'rolls over at',
  extends_by_h: 'extends by',
};
const unitOf = (key: string): string =>
  key.endsWith('_h') ? ' h' : key.endsWith('_mm') ? ' mm' : key.includes('landings') ? ' landings' : '';

/** What an entry says, in words, every field of it: nothing is left out that a figure may rest on. */
export function saysOf(kind: string, body: unknown, names: (id: string) => string): string {
  const b = (body ?? {}) as Fields;
  const said = SAYS[kind]?.(b, names);
  return said ? capital(said) : capital(rest(b, names)) || 'nothing further';
}

const text = (b: Fields, key: string): string => (b[key] === undefined ? '' : String(b[key]));
const word = (b: Fields, key: string): string => plain(text(b, key));
const since = (b: Fields): string =>
  [b.from && `from ${dayIn(b.from)}`, b.to && `to ${dayIn(b.to)}`].filter(Boolean).join(' ');
const dayIn = (v: unknown): string => (typeof v === 'string' && isDay(v) ? day(v) : String(v));
/** The fields that a sentence has not told, as "name value". */
function rest(b: Fields, names: (id: string) => string, told: readonly string[] = []): string {
  return Object.entries(b)
    .filter(([key, v]) => !told.includes(key) && !HIDDEN.includes(key) && v !== undefined)
    .map(([key, v]) => {
      const label = UNITS[key] ?? plain(key.replace(/_(h|mm)$/, ''));
      return `${label} ${valueWords(v, names)}${unitOf(key)}`.trim();
    })
    .join(', ');
}
function valueWords(v: unknown, names: (id: string) => string): string {
  if (Array.isArray(v)) return v.length ? v.map((x) => valueWords(x, names)).join('; ') : 'nothing';
  if (v !== null && typeof v === 'object') {
    const { low, high, low_h, high_h, ...others } = v as Fields;
    if (low !== undefined || low_h !== undefined) return `${low ?? low_h} to ${high ?? high_h}`;
    return rest(others, names);
  }
  if (typeof v === 'string') return isDay(v) ? day(v) : /^[a-z0-9]+(_[a-z0-9]+)+$/.test(v) ? plain(v) : v;
  return String(v);
}
const with_ = (sentence: string, more: string): string => [sentence, more].filter(Boolean).join(', ');

const SAYS: Readonly<Record<string, (b: Fields, names: (id: string) => string) => string>> = {
  part: (b, n) =>
    with_(`${b.hand === 'none' ? '' : `${text(b, 'hand')} `}${word(b, 'part')}`, rest(b, n, ['part', 'hand'])),
  attribute: (b) => `${word(b, 'name')} is ${text(b, 'value')}`,
  fitment: (b, n) => `into ${n(text(b, 'into'))}, place ${word(b, 'place')}`,
  removal: (b) => (b.to ? `to ${b.to === 'unknown' ? 'a place not known' : `the ${word(b, 'to')}`}` : 'taken out'),
  use: (b, n) =>
    with_(
      `${since(b)}: ${b.use ? word(b, 'use') : b.split ? 'shares' : 'use not known'}`,
      rest(b, n, ['from', 'to', 'use']),
    ),
  gap: (b) => `${since(b)}: ${text(b, 'because')}${b.paper_wanted ? `; wanted: ${text(b, 'paper_wanted')}` : ''}`,
  flights: (b, n) =>
    [
      b.from ? `since ${dayIn(b.from)}` : '',
      `${text(b, 'hours_h')} h`,
      b.landings === undefined ? 'landings not stated' : `${text(b, 'landings')} landings`,
      b.use ? word(b, 'use') : 'use not stated',
      rest(b, n, ['from', 'hours_h', 'landings', 'use']),
    ]
      .filter(Boolean)
      .join(', '),
  inspection: (b, n) =>
    with_(
      `“${text(b, 'wording')}”`,
      [
        b.counts_as ? `counts as ${valueWords(b.counts_as, n)}` : 'what it counts as is open',
        rest(b, n, ['wording', 'counts_as']),
      ]
        .filter(Boolean)
        .join(', '),
    ),
  event: (b, n) => with_(word(b, 'event'), rest(b, n, ['event'])),
  kit: (b, n) => with_(`${word(b, 'kit')} ${text(b, 'action')}`, rest(b, n, ['kit', 'action'])),
  repair: (b, n) => with_(word(b, 'repair'), rest(b, n, ['repair'])),
  accomplished: (b, n) =>
    with_(
      `${text(b, 'directive')} issue ${text(b, 'issue')}, ${word(b, 'action')}: found ${word(b, 'finding')}`,
      rest(b, n, ['directive', 'issue', 'action', 'finding']),
    ),
  seen: (b) => `${word(b, 'what')} reads “${text(b, 'value')}”, seen by ${text(b, 'by')}`,
  list_checked: (b) => `list of ${text(b, 'authority')} checked by ${text(b, 'by')}`,
  page: (b) => `${text(b, 'title')}, page ${text(b, 'page')}, kept by ${text(b, 'by')}`,
  letter: (b) => `${text(b, 'number')} on ${text(b, 'directive')}`,
  request: (b) => text(b, 'words'),
  opening: (b, n) => with_(`basis ${word(b, 'basis')}`, rest(b, n, ['basis'])),
};

export const evidenceWords = (e: string): string => EVIDENCE_WORDS[e as Evidence] ?? e;
