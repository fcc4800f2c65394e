import { eq, inArray, sql } from 'drizzle-orm';
import type { Db } from './database.ts';
import { sha256 } from './entry.ts';
import * as t from './schema.ts';

/** As entries write them: `file_sha256`, `pdf_sha256`, `sha256`. */
const NAMED = '"([a-z_]+_)?sha256":"([0-9a-f]{64})"';

const namedIn = (where: ReturnType<typeof sql>) => sql`
  select distinct m[2] as name from log, regexp_matches(log.body || coalesce(log.paper, ''), ${NAMED}, 'g') as m
  where ${where}`;

/** Files that entries of a shop name. */
export async function filesOfShop(db: Db, shop: string): Promise<string[]> {
  const { rows } = (await db.execute(namedIn(sql`log.shop = ${shop}`))) as unknown as { rows: { name: string }[] };
  return rows.map((r) => r.name);
}

/** Takes those of these files away that no entry of any shop names any more. */
export async function dropUnnamed(db: Db, names: readonly string[]): Promise<void> {
  if (names.length === 0) return;
  const still = sql`select 1 from (${namedIn(sql`true`)}) as kept where kept.name = ${t.file.sha256}`;
  await db.delete(t.file).where(sql`${inArray(t.file.sha256, [...names])} and not exists (${still})`);
}

export function filesOf(db: Db) {
  return {
    /** The name under which these bytes are stored, or would be. */
    nameOf: (bytes: Uint8Array): string => sha256(Buffer.from(bytes)),
    /** Stores a file under its SHA-256 and returns it; the same content is stored once. */
    async put(bytes: Uint8Array, mediaType: string): Promise<string> {
      const content = Buffer.from(bytes);
      const name = sha256(content);
      await db.insert(t.file).values({ sha256: name, mediaType, content }).onConflictDoNothing();
      return name;
    },
    async get(name: string): Promise<{ bytes: Uint8Array; mediaType: string } | null> {
      const [row] = await db.select().from(t.file).where(eq(t.file.sha256, name));
      return row ? { bytes: row.content, mediaType: row.mediaType } : null;
    },
  };
}
export type Files = ReturnType<typeof filesOf>;
