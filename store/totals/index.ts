import type pg from 'pg';
import { record } from '../../engine/index.ts';
import { type Circle, circlesOf } from './circles.ts';
import { copyBytes } from './copy.ts';
import { bytesOf, sumsFromBytes } from './figures.ts';

/** An aircraft with its kept totals; without sums it needs the whole way, and `why` says the reason. */
export interface AircraftTotals {
  readonly aircraft: string;
  readonly sums: record.Sums | null;
  readonly why: string | null;
}
export interface TotalsSummary {
  readonly aircraft: number;
  readonly plain: number;
}

export interface PartNamed {
  readonly what: string;
  readonly hand: 'left' | 'right' | 'none';
}

const CHUNK = 500;
const AT_A_STRETCH_MS = 15;
/** Lets the other work of this process go on. */
const others = () => new Promise<void>((go) => setImmediate(go));

/** So many aircraft are brought up to date one by one; for more the whole log is read once. */
const FEW = 200;

interface Row {
  readonly aircraft: string;
  readonly entry: number;
  readonly why: string | null;
  readonly figures: Buffer | null;
}
const rowOf = (c: Circle, policy: record.Policy): Row => {
  const { sums, why } = record.sumsOf(c.entries, c.aircraft, policy);
  return { aircraft: c.aircraft, entry: c.last, why, figures: sums && bytesOf(sums) };
};

/** Totals of each aircraft, kept beside the log: a projection like the others, made again where an entry touched it. */
export function totalsOf(pool: pg.Pool, reads: { circle(shop: string, aircraft: string): Promise<Circle> }) {
  const put = async (client: pg.ClientBase | pg.Pool, shop: string, rows: readonly Row[]): Promise<void> => {
    if (rows.length === 0) return;
    // Stale again where an entry came in meanwhile: the newest entry of the shop is looked at when they are read.
    await client.query(
      `insert into totals (shop, aircraft, entry, why, figures)
       select $1, * from unnest($2::text[], $3::int[], $4::text[], $5::bytea[])
       on conflict (shop, aircraft) do update
       set entry = excluded.entry, why = excluded.why, figures = excluded.figures, stale = false`,
      [shop, rows.map((r) => r.aircraft), rows.map((r) => r.entry), rows.map((r) => r.why), rows.map((r) => r.figures)],
    );
  };
  /** Makes all of them anew in one walk through the log. Writers of the shop wait. */
  const rebuild = async (shop: string, policy: record.Policy): Promise<TotalsSummary> => {
    const client = await pool.connect();
    let [aircraft, plain] = [0, 0];
    try {
      await client.query('begin');
      await client.query('select 1 from shop where id = $1 for update', [shop]);
      await client.query('delete from totals where shop = $1', [shop]);
      let waiting: Row[] = [];
      let since = performance.now();
      for await (const circle of circlesOf(pool, shop)) {
        if (performance.now() - since > AT_A_STRETCH_MS) {
          await others();
          since = performance.now();
        }
        const row = rowOf(circle, policy);
        aircraft++;
        if (row.figures) plain++;
        if (waiting.push(row) < CHUNK) continue;
        await put(client, shop, waiting);
        waiting = [];
      }
      await put(client, shop, waiting);
      await client.query('commit');
    } catch (e) {
      await client.query('rollback').catch(() => {});
      throw e;
    } finally {
      client.release();
    }
    return { aircraft, plain };
  };
  const lacking = async (shop: string): Promise<string[]> => {
    const { rows } = await pool.query<{ subject: string }>(
      `select a.subject from aircraft a left join totals t on t.shop = a.shop and t.aircraft = a.subject
       where a.shop = $1 and (t.aircraft is null or t.stale)`,
      [shop],
    );
    return rows.map((r) => r.subject);
  };
  return {
    rebuild,
    /** Makes those anew that are missing or that an entry has touched. */
    async freshen(shop: string, policy: record.Policy): Promise<void> {
      const list = await lacking(shop);
      if (list.length > FEW) return void (await rebuild(shop, policy));
      for (const aircraft of list) {
        const client = await pool.connect();
        try {
          await client.query('begin');
          await client.query('select 1 from shop where id = $1 for update', [shop]);
          await put(client, shop, [rowOf(await reads.circle(shop, aircraft), policy)]);
          await client.query('commit');
        } catch (e) {
          await client.query('rollback').catch(() => {});
          throw e;
        } finally {
          client.release();
        }
      }
    },
    /** Kept totals, in the order of the subjects, as a stream. Those that are stale are not among them. */
    async *read(shop: string): AsyncGenerator<AircraftTotals> {
      const client = await pool.connect();
      let broken = true;
      try {
        const name = client.escapeLiteral(shop);
        const query = `select aircraft, why, figures from totals where shop = ${name} and not stale order by aircraft`;
        for await (const messages of copyBytes(client, query))
          for (const [aircraft, why, figures] of messages.flat())
            yield {
              aircraft: aircraft!.toString('utf8'),
              why: why?.toString('utf8') ?? null,
              sums: figures ? sumsFromBytes(figures) : null,
            };
        broken = false;
      } finally {
        client.release(broken);
      }
    },
    /** Every part of a shop by its kind and side. */
    async parts(shop: string): Promise<Map<string, PartNamed>> {
      const { rows } = await pool.query<PartNamed & { subject: string }>(
        'select subject, part as what, hand from part where shop = $1',
        [shop],
      );
      return new Map(rows.map((r) => [r.subject, r]));
    },
    /** The log of a shop, aircraft by aircraft. */
    circles: (shop: string): AsyncGenerator<Circle> => circlesOf(pool, shop),
  };
}
export type TotalsRepository = ReturnType<typeof totalsOf>;
export type { Circle } from './circles.ts';
