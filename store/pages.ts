import { and, asc, eq } from 'drizzle-orm';
import type { Db } from './database.ts';
import * as t from './schema.ts';

/** One page of a paper book as it was photographed, or one page of a PDF. */
export interface PageRow {
  readonly entry: number;
  readonly aircraft: string;
  readonly sha256: string;
  readonly mediaType: string;
  readonly title: string;
  readonly page: string;
  /** Which page of the file it is, from 1: the pages of one PDF were kept in their order. */
  readonly inFile: number;
}

/** Kept by an entry of the kind `page`, body `{title, page, sha256, media_type, by}`; its subject is the aircraft. */
export const pagesOf = (db: Db) => ({
  /** The pages of an aircraft in the order in which they were kept. */
  async list(shop: string, aircraft: string): Promise<PageRow[]> {
    const rows = await db
      .select()
      .from(t.page)
      .where(and(eq(t.page.shop, shop), eq(t.page.aircraft, aircraft)))
      .orderBy(asc(t.page.entry));
    const seen = new Map<string, number>();
    return rows.map(({ shop: _, ...row }) => {
      const inFile = (seen.get(row.sha256) ?? 0) + 1;
      seen.set(row.sha256, inFile);
      return { ...row, inFile };
    });
  },
});
export type PageRepository = ReturnType<typeof pagesOf>;
