import { and, asc, desc, eq } from 'drizzle-orm';
import type { Day } from '../engine/index.ts';
import type { Db } from './database.ts';
import { directiveWords } from './directive-words.ts';
import * as t from './schema.ts';

export interface DirectiveRow {
  readonly number: string;
  readonly issue: number;
  readonly adoptedOn: Day;
  readonly adoptedBy: string;
  readonly entry: number;
  readonly document: unknown;
}
/** A directive that the shop took back from a day on: one issue of it, or all. */
export interface WithdrawnRow {
  readonly number: string;
  readonly issue: number | null;
  readonly on: Day;
  readonly by: string;
  readonly because: string;
  readonly entry: number;
}
/** A directive that is being written. It counts nowhere. */
export interface DraftRow {
  readonly number: string;
  readonly on: Day;
  readonly by: string;
  readonly entry: number;
  readonly document: unknown;
}
export interface LetterRow {
  readonly number: string;
  readonly aircraft: string;
  readonly directive: string;
  readonly day: Day;
  readonly entry: number;
  /** SHA-256 of the letter as printed. */
  readonly pdf: string;
  readonly by: string;
}

/** Adopted by an entry of the kind `directive`, body `{document, by}`. */
export const directivesOf = (db: Db) => ({
  /** What directives of this shop may speak of. */
  words: (shop: string) => directiveWords(db, shop),
  /** Every issue adopted, by number, oldest issue first. */
  async list(shop: string): Promise<DirectiveRow[]> {
    const rows = await db
      .select()
      .from(t.directive)
      .where(eq(t.directive.shop, shop))
      .orderBy(asc(t.directive.directive), asc(t.directive.issue));
    return rows.map((r) => ({
      number: r.directive,
      issue: r.issue,
      adoptedOn: r.day as Day,
      adoptedBy: r.adoptedBy,
      entry: r.entry,
      document: JSON.parse(r.document),
    }));
  },
  /** Withdrawn by entries of the kind `directive_withdrawn`, body `{number, issue?, because, by}`; the oldest first. */
  async withdrawn(shop: string): Promise<WithdrawnRow[]> {
    const rows = await db
      .select()
      .from(t.directiveWithdrawn)
      .where(eq(t.directiveWithdrawn.shop, shop))
      .orderBy(asc(t.directiveWithdrawn.entry));
    return rows.map((r) => ({
      number: r.directive,
      issue: r.issue,
      on: r.day as Day,
      by: r.withdrawnBy,
      because: r.because,
      entry: r.entry,
    }));
  },
  /** The newest draft of each number, kept by entries of the kind `directive_draft`, body `{number, document, by}`. */
  async drafts(shop: string): Promise<DraftRow[]> {
    const rows = await db
      .select()
      .from(t.directiveDraft)
      .where(eq(t.directiveDraft.shop, shop))
      .orderBy(asc(t.directiveDraft.directive));
    return rows.map((r) => ({
      number: r.directive,
      on: r.day as Day,
      by: r.keptBy,
      entry: r.entry,
      document: JSON.parse(r.document),
    }));
  },
});
export type DirectiveRepository = ReturnType<typeof directivesOf>;

/** Issued by an entry of the kind `letter`, body `{number, directive, pdf_sha256, ...}`; its subject is the aircraft. */
export const lettersOf = (db: Db) => ({
  /** The newest first. */
  async list(shop: string, aircraft?: string): Promise<LetterRow[]> {
    const of = aircraft === undefined ? undefined : eq(t.letter.aircraft, aircraft);
    const rows = await db
      .select()
      .from(t.letter)
      .where(and(eq(t.letter.shop, shop), of))
      .orderBy(desc(t.letter.entry));
    return rows.map((r) => ({
      number: r.letter,
      aircraft: r.aircraft,
      directive: r.directive,
      day: r.day as Day,
      entry: r.entry,
      pdf: r.pdfSha256,
      by: r.issuedBy,
    }));
  },
});
export type LetterRepository = ReturnType<typeof lettersOf>;

/** Remembered by an entry of the kind `mapping`, body `{shape, mapping}`. */
export const mappingsOf = (db: Db) => ({
  /** What was chosen the last time a file of this shape came in; null if none did. */
  async get(shop: string, shape: string): Promise<unknown | null> {
    const [row] = await db
      .select()
      .from(t.mapping)
      .where(and(eq(t.mapping.shop, shop), eq(t.mapping.shape, shape)));
    return row ? JSON.parse(row.mapping) : null;
  },
});
export type MappingRepository = ReturnType<typeof mappingsOf>;
