import { entriesOf } from './by-subject.ts';
import type { EntryOf } from './document.ts';
import type { Finding, RecordModel } from './model.ts';

export const BASE_KINDS = ['annual', 'hundred_hour'] as const;
const plain = (wording: string) => wording.trim().toLowerCase().replace(/\s+/g, ' ');

export interface Counted {
  readonly entry: EntryOf<'inspection'>;
  /** Kinds that it counts as; null: no ruling, so each kind is open. */
  readonly kinds: readonly string[] | null;
  readonly ruling: EntryOf<'ruling'> | null;
}

/** What each inspection counts as: as written on the entry, else by the ruling for this aircraft, else for the shop. */
export function countedInspections(
  model: Pick<RecordModel, 'entries' | 'things'>,
  subject: string,
  aircraft: string | null,
): Counted[] {
  const rulings = model.entries.filter((e): e is EntryOf<'ruling'> => e.kind === 'ruling');
  return entriesOf(model, subject, 'inspection').map((entry) => {
    if (entry.body.counts_as) return { entry, kinds: entry.body.counts_as, ruling: null };
    const fits = rulings.filter((r) => plain(r.body.wording) === plain(entry.body.wording));
    const own = fits.filter((r) => r.subject === subject || r.subject === aircraft);
    const shop = fits.filter((r) => !model.things.has(r.subject));
    const ruling = own.at(-1) ?? shop.at(-1) ?? null;
    return { entry, kinds: ruling ? ruling.body.counts_as : null, ruling };
  });
}

/** Kinds of inspection that the record speaks of, the two of the regulation always. */
export function inspectionKinds(model: RecordModel): string[] {
  const kinds = new Set<string>(BASE_KINDS);
  for (const e of model.entries) {
    if (e.kind === 'inspection') for (const k of e.body.counts_as ?? []) kinds.add(k);
    if (e.kind === 'ruling') for (const k of e.body.counts_as) kinds.add(k);
    if (e.kind === 'opening') for (const k of Object.keys(e.body.inspections ?? {})) kinds.add(k);
  }
  return [...kinds].sort();
}

export function unruledFindings(counted: readonly Counted[]): Finding[] {
  const byWording = new Map<string, string[]>();
  for (const c of counted)
    if (!c.kinds)
      byWording.set(plain(c.entry.body.wording), [...(byWording.get(plain(c.entry.body.wording)) ?? []), c.entry.id]);
  return [...byWording].map(([wording, entries]) => ({
    code: 'record.wording-not-ruled',
    text: `No ruling says what "${wording}" counts as; each may count or not.`,
    entries,
    remedy: 'Have a named person rule on this wording once; the ruling is kept and reused',
  }));
}
