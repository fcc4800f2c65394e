import type { record } from '../../engine/index.ts';

type Entry = record.EntryInput;
type Paper = { title: string; page?: string; row?: number };

/** Writes the entries of one aircraft of the invented scenario, in the order in which its papers tell them. */
export class Book {
  readonly entries: Entry[] = [];
  readonly #prefix: string;
  readonly #title: string;
  #page = 1;

  constructor(prefix: string, title: string) {
    this.#prefix = prefix;
    this.#title = title;
  }

  /** One entry of any kind; the page of the book moves on by itself. */
  add<K extends Entry['kind']>(
    kind: K,
    subject: string,
    day: string,
    body: Extract<Entry, { kind: K }>['body'],
    more: { evidence?: Entry['evidence']; order?: number; paper?: Paper; note?: string } = {},
  ): this {
    const page = String(this.#page + Math.floor(this.entries.length / 12));
    this.entries.push({
      id: `${this.#prefix}-${this.entries.length + 1}`,
      subject,
      kind,
      day,
      order: more.order ?? 0,
      evidence: more.evidence ?? 'copy',
      paper: more.paper ?? { title: this.#title, page },
      ...(more.note ? { note: more.note } : {}),
      body,
    } as Entry);
    return this;
  }

  /** Yearly readings of hours and landings as the annual inspections give them: [day, total hours, total landings]. */
  readings(subject: string, rows: readonly (readonly [day: string, total_h: number, landings: number])[]): this {
    for (const [day, total_h, landings] of rows) {
      this.add('reading', subject, day, { total_h, landings }, { order: 9 });
      this.add(
        'inspection',
        subject,
        day,
        { wording: 'Annual inspection', counts_as: ['annual'], total_h },
        { order: 8 },
      );
    }
    return this;
  }
}

/** The doubler under the walkway, on the right wing only. */
export function doubler(book: Book, serial: string, built: string): void {
  const assumed = { evidence: 'assumed' as const, paper: { title: 'Build list of the type (invented)' } };
  const part = `doubler:${serial}-R`;
  book.add('part', part, built, { part: 'walkway_doubler', hand: 'right', built }, assumed);
  book.add(
    'fitment',
    part,
    built,
    { into: `wing:${serial}-R`, place: 'right_walkway_doubler' },
    { ...assumed, order: 2 },
  );
}

/** Two wings with an inboard and an outboard spar each, original to the aircraft, fitted on the day it was built. */
export function wings(
  book: Book,
  serial: string,
  built: string,
  aircraft: string,
  stamps: { left?: string; right?: string } = {},
): void {
  for (const hand of ['left', 'right'] as const) {
    const side = hand === 'left' ? 'L' : 'R';
    const assumed = { evidence: 'assumed' as const, paper: { title: 'Build list of the type (invented)' } };
    book.add('part', `wing:${serial}-${side}`, built, { part: 'wing', hand, built }, assumed);
    book.add(
      'fitment',
      `wing:${serial}-${side}`,
      built,
      { into: aircraft, place: `${hand}_wing` },
      { ...assumed, order: 1 },
    );
    const stamp = stamps[hand];
    book.add(
      'part',
      `spar:${serial}-${side}`,
      built,
      { part: 'inboard_spar', hand, part_number: 'W4-5710', built, ...(stamp ? { stamp } : {}) },
      stamp ? { evidence: 'seen', paper: { title: 'Seen on the aircraft' } } : assumed,
    );
    book.add(
      'fitment',
      `spar:${serial}-${side}`,
      built,
      { into: `wing:${serial}-${side}`, place: `${hand}_inboard_spar` },
      { ...assumed, order: 1 },
    );
  }
}

/** A regular life: `from`, then one reading a year, with a slow swing so that no two years are alike. */
export function yearly(
  from: { day: string; total_h: number; landings: number },
  years: number,
  perYear: { hours: number; landings: number },
): [string, number, number][] {
  let { total_h, landings } = from;
  const rows: [string, number, number][] = [[from.day, total_h, landings]];
  const start = Number(from.day.slice(0, 4));
  for (let i = 1; i <= years; i++) {
    const swing = 1 + 0.18 * Math.sin(i * 1.7);
    total_h = Math.round((total_h + perYear.hours * swing) * 10) / 10;
    landings += Math.round(perYear.landings * swing);
    rows.push([`${start + i}-${from.day.slice(5)}`, total_h, landings]);
  }
  return rows;
}
