import { asc, eq, sql } from 'drizzle-orm';
import { Refusal } from '../engine/index.ts';
import type { Db } from './database.ts';
import { dropUnnamed, filesOfShop } from './files.ts';
import { rebuild } from './project.ts';
import * as t from './schema.ts';

export interface Shop {
  readonly id: string;
  readonly name: string;
  readonly invented: boolean;
  readonly settings: Readonly<Record<string, unknown>>;
  /** Number of its last entry. */
  readonly last: number;
  /** How many aircraft it has. */
  readonly aircraft: number;
}

const unknownShop = (id: string) =>
  new Refusal('store.shop-unknown', {
    given: `shop "${id}"`,
    allowed: 'a shop that was opened',
    remedy: 'Open the shop on the start page first',
  });

/** Takes the shop's row for this transaction: one writer at a time, so that numbers have no gaps. */
export async function lockShop(tx: Db, id: string): Promise<typeof t.shop.$inferSelect> {
  const [row] = await tx.select().from(t.shop).where(eq(t.shop.id, id)).for('update');
  if (!row) throw unknownShop(id);
  return row;
}

export function shopsOf(db: Db) {
  const find = async (id?: string): Promise<Shop[]> => {
    const rows = await db
      .select({
        shop: t.shop,
        aircraft: sql<number>`(select count(*)::int from aircraft where aircraft.shop = ${t.shop.id})`,
      })
      .from(t.shop)
      .where(id === undefined ? undefined : eq(t.shop.id, id))
      .orderBy(asc(t.shop.invented), asc(t.shop.id));
    return rows.map(({ shop, aircraft }) => ({
      id: shop.id,
      name: shop.name,
      invented: shop.invented,
      settings: JSON.parse(shop.settings),
      last: shop.lastNumber,
      aircraft,
    }));
  };
  /** @throws Refusal `store.shop-unknown` */
  const get = async (id: string): Promise<Shop> => {
    const [shop] = await find(id);
    if (!shop) throw unknownShop(id);
    return shop;
  };
  return {
    /** Real shops first. */
    list: () => find(),
    get,
    /** Opens a shop; opening one that is open changes nothing. @throws Refusal `store.shop-exists` */
    async open(shop: { id: string; name: string; invented: boolean }): Promise<void> {
      const { id, name, invented } = shop;
      await db.insert(t.shop).values({ id, name, invented }).onConflictDoNothing();
      const now = await get(id);
      if (now.invented !== invented)
        throw new Refusal('store.shop-exists', {
          given: `shop "${id}" is already there and is ${now.invented ? 'invented' : 'real'}`,
          allowed: 'one kind for the whole life of a shop',
          remedy: 'Choose another identity',
        });
    },
    /** Takes an invented shop out whole and notes who did. @throws Refusal `store.shop-is-real` */
    async drop(id: string, by = 'the shop', at = new Date().toISOString()): Promise<void> {
      const shop = await get(id);
      if (!shop.invented)
        throw new Refusal('store.shop-is-real', {
          given: `shop "${id}" holds real aircraft`,
          allowed: 'only an invented shop is taken out',
          remedy: 'Nothing of a real shop is deleted; correct entries instead',
        });
      await db.transaction(async (tx) => {
        const files = await filesOfShop(tx, id);
        await tx.execute(sql`select drop_invented_shop(${id}, ${at}, ${by})`);
        await dropUnnamed(tx, files);
      });
    },
    /** Makes every projection of a shop again from its log. */
    rebuild: (id: string): Promise<void> =>
      db.transaction(async (tx) => {
        await lockShop(tx, id);
        await rebuild(tx, id);
      }),
  };
}
export type Shops = ReturnType<typeof shopsOf>;
