import { eq } from 'drizzle-orm';
import type { Db } from './database.ts';
import { sha256 } from './entry.ts';
import * as t from './schema.ts';

export function filesOf(db: Db) {
  return {
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
