import { sql } from 'drizzle-orm';
import type { Db } from './database.ts';

/** Words that the record of a shop uses, each once, in order. */
export interface DirectiveWords {
  readonly uses: readonly string[];
  readonly kits: readonly string[];
  readonly events: readonly string[];
  readonly inspections: readonly string[];
  readonly parts: readonly string[];
  readonly models: readonly string[];
  readonly partNumbers: readonly string[];
}

const kept = new WeakMap<Db, Map<string, { last: number; words: DirectiveWords }>>();

/** What directives of this shop may speak of. Read from the log once, and again only when the log has moved on. */
export async function directiveWords(db: Db, shop: string): Promise<DirectiveWords> {
  const last = Number(
    (await db.execute<{ n: number }>(sql`select last_number as n from shop where id = ${shop}`)).rows[0]?.n ?? 0,
  );
  const held = kept.get(db)?.get(shop);
  if (held?.last === last) return held.words;
  const words = await read(db, shop);
  const all = kept.get(db) ?? new Map<string, { last: number; words: DirectiveWords }>();
  kept.set(db, all.set(shop, { last, words }));
  return words;
}

async function read(db: Db, shop: string): Promise<DirectiveWords> {
  const one = async (query: ReturnType<typeof sql>): Promise<string[]> => {
    const { rows } = await db.execute<{ word: string | null }>(query);
    return rows.flatMap((r) => (r.word ? [r.word] : [])).sort();
  };
  const said = (kind: string, field: string) =>
    one(sql`select distinct body::jsonb ->> ${field}::text as word from log where shop = ${shop} and kind = ${kind}`);
  return {
    uses: await one(sql`
      select distinct u.word from log, lateral (
        select body::jsonb ->> 'use' as word
        union all select body::jsonb ->> 'rest'
        union all select jsonb_path_query(body::jsonb, '$.split[*].use') #>> '{}'
      ) u where shop = ${shop} and kind in ('use', 'flights')`),
    kits: await said('kit', 'kit'),
    events: await said('event', 'event'),
    inspections: await one(sql`
      select distinct jsonb_path_query(body::jsonb, '$.counts_as[*]') #>> '{}' as word
      from log where shop = ${shop} and kind in ('inspection', 'ruling')`),
    parts: await one(sql`select distinct part as word from part where shop = ${shop}`),
    models: await one(sql`select distinct model as word from aircraft where shop = ${shop}`),
    partNumbers: await one(sql`select distinct part_number as word from part where shop = ${shop}`),
  };
}
