import { given, slugOf } from '../aircraft/forms/read.ts';

/** What one field of an entry is, and how it is typed. */
export interface FieldOf {
  readonly key: string;
  readonly label: string;
  readonly is:
    | 'text'
    | 'word'
    | 'hours'
    | 'count'
    | 'day'
    | 'choice'
    | 'words'
    | 'hours-bounds'
    | 'count-bounds'
    | 'number';
  readonly unit?: string;
  readonly hint?: string;
  readonly required?: boolean;
  readonly choices?: readonly string[];
}
const f = (key: string, label: string, is: FieldOf['is'], more: Partial<FieldOf> = {}): FieldOf => ({
  key,
  label,
  is,
  ...more,
});
const must = { required: true };
const h = { unit: 'h' };

/** Kinds that a person adds beside the scan, with their fields; others are corrected as they were recorded. */
export const FIELDS: Readonly<Record<string, readonly FieldOf[]>> = {
  reading: [
    f('total_h', 'Total in the book', 'hours', h),
    f('landings', 'Landings', 'count'),
    f('meter', 'Meter', 'word', { hint: 'Only with what it shows' }),
    f('shows_h', 'Meter shows', 'hours', h),
  ],
  meter: [
    f('meter', 'Meter', 'word', must),
    f('counts', 'Counts', 'choice', {
      choices: ['tachometer', 'engine_running', 'airborne', 'book', 'landing_counter'],
      required: true,
    }),
    f('shows_h', 'Shows when fitted', 'hours', h),
    f('shows_landings', 'Shows landings', 'count'),
    f('rolls_over_at_h', 'Rolls over at', 'hours', h),
  ],
  flights: [
    f('from', 'Since', 'day', { hint: 'If the row covers more than its day' }),
    f('hours_h', 'Flown', 'hours', { ...h, ...must }),
    f('landings', 'Landings', 'count'),
    f('use', 'Use', 'word', { hint: 'Empty: not known' }),
  ],
  use: [
    f('from', 'From', 'day', must),
    f('to', 'To', 'day'),
    f('use', 'Use', 'word', { hint: 'Empty: not known' }),
    f('rest', 'The rest was', 'word', { hint: 'Only with shares' }),
  ],
  gap: [
    f('from', 'From', 'day', must),
    f('to', 'To', 'day', must),
    f('because', 'Why no paper exists', 'text', must),
    f('paper_wanted', 'Paper wanted', 'text'),
  ],
  inspection: [
    f('wording', 'As the book words it', 'text', must),
    f('counts_as', 'Counts as', 'words', { hint: 'Empty: open until ruled; for example annual, hundred hour' }),
    f('total_h', 'Total in the book', 'hours', h),
  ],
  fitment: [
    f('into', 'Into', 'choice', must),
    f('place', 'Place', 'word', { ...must, hint: 'For example left inboard spar' }),
  ],
  removal: [f('to', 'To', 'choice', { choices: ['shelf', 'scrap', 'unknown'] })],
  kit: [
    f('kit', 'Kit', 'word', must),
    f('action', 'Was', 'choice', { choices: ['fitted', 'removed'], required: true }),
    f('part_number', 'Part number', 'text'),
  ],
  repair: [
    f('repair', 'Repair or damage', 'word', { ...must, hint: 'For example doubler, blend out' }),
    f('where', 'Where', 'text'),
    f('size_mm', 'Size', 'number', { unit: 'mm' }),
    f('detail', 'Detail', 'text'),
  ],
  event: [f('event', 'Event', 'word', { ...must, hint: 'For example hard landing' }), f('detail', 'Detail', 'text')],
  seen: [
    f('what', 'What', 'choice', {
      choices: ['stamp', 'part_number', 'serial', 'kit', 'repair', 'condition'],
      required: true,
    }),
    f('value', 'As it reads', 'text', must),
    f('by', 'Seen by', 'text', must),
  ],
  opening: [
    f('basis', 'Known from', 'choice', { choices: ['donor_record', 'shop_policy', 'new'], required: true }),
    f('hours_h', 'Hours before', 'hours-bounds', { ...h, ...must, hint: 'A figure, or "90 to 110"' }),
    f('landings', 'Landings before', 'count-bounds', { ...must, hint: 'A figure, or "900 to 1100"' }),
    f('because', 'Why', 'text'),
  ],
  part: [
    f('part', 'Part', 'word', { ...must, hint: 'For example inboard spar' }),
    f('hand', 'Side', 'choice', { choices: ['left', 'right', 'none'], required: true }),
    f('part_number', 'Part number', 'text'),
    f('serial', 'Serial', 'text'),
    f('stamp', 'Stamp', 'text'),
    f('built', 'Made on', 'day'),
  ],
  attribute: [
    f('name', 'Attribute', 'choice', {
      choices: ['registration', 'owner', 'base', 'serial', 'stamp', 'part_number', 'type', 'model'],
      required: true,
    }),
    f('value', 'Is', 'text', must),
  ],
};

const shown = (v: unknown): string => {
  if (Array.isArray(v)) return v.map(String).join(', ').replaceAll('_', ' ');
  if (v !== null && typeof v === 'object') {
    const b = v as Record<string, unknown>;
    return `${b.low ?? b.low_h} to ${b.high ?? b.high_h}`;
  }
  return v === undefined || v === null ? '' : String(v);
};
/** Fields as they were recorded, for the form that corrects them. */
export const textsOf = (kind: string, body: Readonly<Record<string, unknown>>): Record<string, string> =>
  Object.fromEntries(
    (FIELDS[kind] ?? []).map((x) => [
      x.key,
      x.is === 'word' ? shown(body[x.key]).replaceAll('_', ' ') : shown(body[x.key]),
    ]),
  );
/** What the fields of a kind do not tell: it stays as it was recorded, and can be changed as it is written. */
export function furtherOf(kind: string, body: Readonly<Record<string, unknown>>): string {
  const known = new Set((FIELDS[kind] ?? []).map((x) => x.key));
  const rest = Object.entries(body).filter(([k]) => !known.has(k));
  return rest.length ? JSON.stringify(Object.fromEntries(rest), null, 2) : '';
}

function typedOf(x: FieldOf, text: string): unknown {
  const t = text.trim();
  if (t === '') {
    if (x.required) throw new Error(`Fill in "${x.label}".`);
    return undefined;
  }
  const bounds = /^(.+?)\s+to\s+(.+)$/.exec(t);
  switch (x.is) {
    case 'word':
      return wordOf(x, t);
    case 'words':
      return t.split(/[,;]/).map((w) => wordOf(x, w));
    case 'count':
      return countOf(x, t);
    case 'number':
      return figureOf(x, t);
    case 'hours':
      return hoursOf(x, t);
    case 'hours-bounds':
      return bounds ? { low_h: hoursOf(x, bounds[1]!), high_h: hoursOf(x, bounds[2]!) } : hoursOf(x, t);
    case 'count-bounds':
      return bounds ? { low: countOf(x, bounds[1]!), high: countOf(x, bounds[2]!) } : countOf(x, t);
    default:
      return t;
  }
}
const BLANKS = /[\s\u202f'’]/g;
function wordOf(x: FieldOf, t: string): string {
  const slug = slugOf(t);
  if (slug === '') throw new Error(`Say "${x.label}" in letters.`);
  return slug;
}
function countOf(x: FieldOf, t: string): number {
  const plain = t.replaceAll(BLANKS, '');
  if (!/^\d+$/.test(plain)) throw new Error(`"${t}" is no whole number for "${x.label}".`);
  return Number(plain);
}
function figureOf(x: FieldOf, t: string): number {
  const n = Number(t.replaceAll(BLANKS, '').replace(',', '.'));
  if (!Number.isFinite(n)) throw new Error(`"${t}" is no figure for "${x.label}".`);
  return n;
}
/** Hours as decimals or hours:minutes, as the log keeps them. */
function hoursOf(x: FieldOf, t: string): number | string {
  const plain = t.replaceAll(BLANKS, '');
  if (/^\d+:[0-5]\d$/.test(plain)) return plain;
  const n = Number(plain.replace(',', '.'));
  if (plain === '' || !Number.isFinite(n) || n < 0)
    throw new Error(`"${t}" are no hours for "${x.label}": write 5.4 or 5:24.`);
  return n;
}

/** The body of an entry from its fields; says in words what is missing. @throws Error */
export function bodyOf(
  kind: string,
  texts: Readonly<Record<string, string>>,
  further: string,
): Record<string, unknown> {
  let rest: unknown = {};
  try {
    rest = further.trim() === '' ? {} : JSON.parse(further);
  } catch {
    throw new Error('What else the entry says is no longer readable: put it back as it was.');
  }
  const body = Object.fromEntries((FIELDS[kind] ?? []).map((x) => [x.key, typedOf(x, texts[x.key] ?? '')]));
  return { ...(rest as object), ...given(body) };
}
