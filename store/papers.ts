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
