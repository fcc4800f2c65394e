import { sql } from 'drizzle-orm';
import type { Db } from '../database.ts';

/** Not made from the log alone: the log itself and the audit. What the engine computed carries the mark `stale`. */
const LEFT_OUT = ['log', 'dropped_shop'];

const rowsOf = <T>(result: unknown): T[] => (result as { rows: T[] }).rows;

/** The migrations behind the tables: figures over projections compare only where they agree. */
export async function shapeOfTables(db: Db): Promise<string> {
  const [row] = rowsOf<{ shape: string }>(
    await db.execute(sql`select md5(string_agg(hash, ',' order by name)) as shape from migration`),
  );
  return row?.shape ?? '';
}

/** One figure over every row of a shop's projections, whatever their order, in constant memory. */
export async function tablesFigure(db: Db, shop: string): Promise<string> {
  const tables = rowsOf<{ name: string }>(
    await db.execute(sql`
      select c.table_name as name from information_schema.columns c
      join information_schema.tables t using (table_schema, table_name)
      where c.table_schema = current_schema() and c.column_name = 'shop' and t.table_type = 'BASE TABLE'
        and c.table_name not in (${sql.join(
          LEFT_OUT.map((n) => sql`${n}`),
          sql`, `,
        )})
        and not exists (
          select 1 from information_schema.columns s
          where (s.table_schema, s.table_name) = (c.table_schema, c.table_name) and s.column_name = 'stale')
      order by 1`),
  );
  const figures: string[] = [];
  for (const { name } of tables) {
    const [row] = rowsOf<{ n: number; figure: string }>(
      await db.execute(sql`
        select count(*)::int as n,
          coalesce(sum(('x' || left(md5(r::text), 15))::bit(60)::bigint::numeric), 0)::text as figure
        from ${sql.identifier(name)} r where r.shop = ${shop}`),
    );
    if (row && row.n > 0) figures.push(`${name} ${row.n} ${row.figure}`);
  }
  return figures.join('; ');
}
