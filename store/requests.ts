import { desc, eq } from 'drizzle-orm';
import type { Day } from '../engine/index.ts';
import type { Db } from './database.ts';
import * as t from './schema.ts';

/** What an owner was asked for, in the words that went to him. */
export interface RequestRow {
  readonly entry: number;
  readonly aircraft: string;
  /** `reading`, so far. */
  readonly asks: string;
  readonly day: Day;
  readonly words: string;
  readonly by: string;
}

/** Kept by an entry of the kind `request`, body `{asks, words, by}`; its subject is the aircraft. */
export const requestsOf = (db: Db) => ({
  /** The newest first. */
  async list(shop: string): Promise<RequestRow[]> {
    const rows = await db.select().from(t.request).where(eq(t.request.shop, shop)).orderBy(desc(t.request.entry));
    return rows.map(({ shop: _, askedBy, ...r }) => ({ ...r, day: r.day as Day, by: askedBy }));
  },
});
export type RequestRepository = ReturnType<typeof requestsOf>;
