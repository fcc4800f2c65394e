import { asc, eq } from 'drizzle-orm';
import type { Db } from '../database.ts';
import { rebuild } from '../project.ts';
import * as t from '../schema.ts';
import { lockShop } from '../shops.ts';
import { verifyShop } from '../verify.ts';
import { tablesFigure } from './tables.ts';

export interface ShopCheck {
  readonly id: string;
  readonly name: string;
  readonly entries: number;
  /** What is wrong, in sentences; empty if all is well. */
  readonly problems: readonly string[];
}

class Undo extends Error {}

/** Makes the tables of a shop again from its log, compares, and takes that back. */
async function tablesDiffer(db: Db, shop: string): Promise<boolean> {
  let differ = false;
  try {
    await db.transaction(async (tx) => {
      await lockShop(tx, shop);
      const before = await tablesFigure(tx, shop);
      await rebuild(tx, shop);
      differ = (await tablesFigure(tx, shop)) !== before;
      throw new Undo();
    });
  } catch (e) {
    if (!(e instanceof Undo)) throw e;
  }
  return differ;
}

export async function checkStore(db: Db): Promise<ShopCheck[]> {
  const shops = await db.select().from(t.shop).orderBy(asc(t.shop.invented), asc(t.shop.id));
  const checks: ShopCheck[] = [];
  for (const { id, name } of shops) {
    const problems = await verifyShop(db, id);
    if (problems.length === 0 && (await tablesDiffer(db, id)))
      problems.push(
        'its pages do not show what its log holds; start a newer version of the program, or restore a copy',
      );
    const [now] = await db.select({ n: t.shop.lastNumber }).from(t.shop).where(eq(t.shop.id, id));
    checks.push({ id, name, entries: now?.n ?? 0, problems });
  }
  return checks;
}
