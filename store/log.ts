import { and, asc, desc, eq, gt, inArray, like, lte, sql } from 'drizzle-orm';
import { canonicalJson, parseDay, Refusal } from '../engine/index.ts';
import type { Db } from './database.ts';
import { entryFromRow, hashOf, type LogEntry, type LogRow, type NewEntry, toDocumentEntry } from './entry.ts';
import { projectPapers, projectSubjects } from './project.ts';
import * as t from './schema.ts';
import { lockShop } from './shops.ts';
import { makeStale } from './stale.ts';
import { verifyShop } from './verify.ts';

interface Recording {
  readonly by: string;
  readonly at: string;
  readonly expectLast?: number | undefined;
  readonly nothingSince?: NothingSince | undefined;
}
/** What was decided on: nothing of these subjects may have come in after this entry. */
export interface NothingSince {
  readonly entry: number;
  readonly subjects: readonly string[];
}
export interface ReadFilter {
  readonly subjects?: readonly string[] | undefined;
  readonly kinds?: readonly string[] | undefined;
  /** As known at this entry: nothing later, and nothing replaced by something later. */
  readonly upTo?: number | undefined;
  readonly after?: number | undefined;
  /** Leaves out what has been replaced. */
  readonly inForce?: boolean | undefined;
  /** Only entries that correct one of these. */
  readonly replacing?: readonly number[] | undefined;
}

const CHUNK = 500;

function unknownEntry(given: string): Refusal {
  return new Refusal('store.replaces-unknown', {
    given: `Entry ${given} is to be corrected`,
    allowed: 'the number of an entry of this shop, or of an earlier one in the same list',
    remedy: 'Correct the number',
  });
}

function seal(
  shop: string,
  entries: readonly NewEntry[],
  from: { lastNumber: number; lastHash: string },
  r: Recording,
) {
  const at = new Date(r.at).toISOString();
  const ids = new Map<string, number>();
  let previousHash = from.lastHash;
  return entries.map((e, i): LogRow => {
    const number = from.lastNumber + 1 + i;
    const replaces = e.replaces === undefined ? null : (ids.get(String(e.replaces)) ?? Number(e.replaces));
    if (replaces !== null && !(Number.isInteger(replaces) && replaces > 0 && replaces < number))
      throw unknownEntry(String(e.replaces));
    if (e.id !== undefined) ids.set(e.id, number);
    const open = {
      shop,
      number,
      subject: e.subject,
      kind: e.kind,
      day: parseDay(e.day),
      order: e.order,
      schema: e.schema,
      body: canonicalJson(e.body),
      evidence: e.evidence,
      paper: e.paper === undefined || e.paper === null ? null : canonicalJson(e.paper),
      note: e.note ?? null,
      replaces,
      recordedAt: at,
      recordedBy: r.by,
      previousHash,
    };
    const hash = hashOf(open);
    previousHash = hash;
    return { ...open, hash };
  });
}

/** What has been replaced once is corrected at its newest entry, not twice. */
async function replacedSubjects(db: Db, shop: string, rows: readonly LogRow[]): Promise<string[]> {
  const numbers = rows.flatMap((r) => (r.replaces === null ? [] : [r.replaces]));
  if (numbers.length === 0) return [];
  const [again] = await db
    .select({ number: t.log.replaces, by: t.log.number })
    .from(t.log)
    .where(and(eq(t.log.shop, shop), inArray(t.log.replaces, numbers)));
  const twice = again?.number ?? numbers.find((n, i) => numbers.indexOf(n) !== i);
  if (twice !== undefined && twice !== null)
    throw new Refusal('store.entry-replaced', {
      given: `Entry ${twice} has already been corrected${again ? ` by entry ${again.by}` : ''}`,
      allowed: 'one correction of an entry; the next one corrects the correction',
      remedy: 'Name the newest entry instead',
    });
  const found = await db
    .select({ subject: t.log.subject })
    .from(t.log)
    .where(and(eq(t.log.shop, shop), inArray(t.log.number, numbers)));
  return found.map((f) => f.subject);
}

/** @throws Refusal `store.changed-meanwhile` where one of the subjects has a later entry */
async function requireNothing(tx: Db, shop: string, { entry, subjects }: NothingSince): Promise<void> {
  const [later] = await tx
    .select({ number: t.log.number, subject: t.log.subject, by: t.log.recordedBy })
    .from(t.log)
    .where(and(eq(t.log.shop, shop), gt(t.log.number, entry), inArray(t.log.subject, [...subjects])))
    .orderBy(desc(t.log.number))
    .limit(1);
  if (!later) return;
  throw new Refusal('store.changed-meanwhile', {
    given: `${later.by} recorded entry ${later.number} of ${later.subject} in the meantime`,
    allowed: 'recording on top of what was last shown',
    remedy: 'Look at the page again and repeat',
  });
}

/** Appends within a transaction that holds the shop. */
async function append(tx: Db, shop: string, entries: readonly NewEntry[], r: Recording): Promise<number[]> {
  const held = await lockShop(tx, shop);
  if (r.expectLast !== undefined && r.expectLast !== held.lastNumber)
    throw new Refusal('store.changed-meanwhile', {
      given: `The log has moved on from entry ${r.expectLast} to entry ${held.lastNumber} in the meantime`,
      allowed: 'recording on top of what was last shown',
      remedy: 'Look at the page again and repeat',
    });
  if (r.nothingSince) await requireNothing(tx, shop, r.nothingSince);
  const rows = seal(shop, entries, held, r);
  const last = rows.at(-1);
  if (!last) return [];
  const alsoTouched = await replacedSubjects(tx, shop, rows);
  for (let i = 0; i < rows.length; i += CHUNK) await tx.insert(t.log).values(rows.slice(i, i + CHUNK));
  await tx.update(t.shop).set({ lastNumber: last.number, lastHash: last.hash }).where(eq(t.shop.id, shop));
  const subjects = [...new Set([...rows.map((row) => row.subject), ...alsoTouched])];
  await projectSubjects(tx, shop, subjects);
  await projectPapers(tx, shop, rows.map(entryFromRow));
  await makeStale(tx, shop, rows);
  return rows.map((row) => row.number);
}

export function logOf(db: Db) {
  const read = async (shop: string, o: ReadFilter = {}): Promise<LogEntry[]> => {
    const later = o.upTo === undefined ? sql`` : sql`and later.number <= ${o.upTo}`;
    const rows = await db
      .select()
      .from(t.log)
      .where(
        and(
          eq(t.log.shop, shop),
          o.subjects ? inArray(t.log.subject, [...o.subjects]) : undefined,
          o.kinds ? inArray(t.log.kind, [...o.kinds]) : undefined,
          o.replacing ? inArray(t.log.replaces, [...o.replacing]) : undefined,
          o.upTo === undefined ? undefined : lte(t.log.number, o.upTo),
          o.after === undefined ? undefined : gt(t.log.number, o.after),
          o.inForce
            ? sql`not exists (select 1 from log as later where later.shop = ${t.log.shop} and later.replaces = ${t.log.number} ${later})`
            : undefined,
        ),
      )
      .orderBy(asc(t.log.number));
    return rows.map(entryFromRow);
  };

  return {
    /**
     * Records entries, all of them or none, and returns their numbers, in the order given.
     * @param at the moment of recording, ISO 8601
     * @param options.expectLast number of the last entry that the caller knew
     * @param options.nothingSince what the caller decided on, where others may write about other things
     * @throws Refusal `store.shop-unknown`, `store.changed-meanwhile`, `store.replaces-unknown`, `store.entry-replaced`
     */
    append: (
      shop: string,
      entries: readonly NewEntry[],
      by: string,
      at: string,
      options: { expectLast?: number | undefined; nothingSince?: NothingSince | undefined } = {},
    ): Promise<number[]> => db.transaction((tx) => append(tx, shop, entries, { by, at, ...options })),
    read,
    /** Entries of the record as its document writes them, replaced ones included: the engine applies corrections. */
    async record(
      shop: string,
      o: { subjects?: readonly string[]; upTo?: number } = {},
    ): Promise<Record<string, unknown>[]> {
      const rows = await db
        .select()
        .from(t.log)
        .where(
          and(
            eq(t.log.shop, shop),
            like(t.log.schema, 'record/%'),
            o.subjects ? inArray(t.log.subject, [...o.subjects]) : undefined,
            o.upTo === undefined ? undefined : lte(t.log.number, o.upTo),
          ),
        )
        .orderBy(asc(t.log.number));
      return rows.map((row) => toDocumentEntry(entryFromRow(row)));
    },
    async last(shop: string): Promise<number> {
      const [found] = await db.select({ n: t.shop.lastNumber }).from(t.shop).where(eq(t.shop.id, shop));
      return found?.n ?? 0;
    },
    /** The last entry of the gapless sequence recorded by the end of this day (UTC): what "as known on" stands for. */
    async lastKnownOn(shop: string, day: string): Promise<number> {
      const [tooLate] = await db
        .select({ n: sql<number | null>`min(${t.log.number})` })
        .from(t.log)
        .where(and(eq(t.log.shop, shop), sql`left(${t.log.recordedAt}, 10) > ${day}`));
      if (tooLate?.n != null) return tooLate.n - 1;
      const [newest] = await db
        .select({ n: t.log.number })
        .from(t.log)
        .where(eq(t.log.shop, shop))
        .orderBy(desc(t.log.number))
        .limit(1);
      return newest?.n ?? 0;
    },
    /** The latest instant that the last thousand entries carry; later than that of the last entry if the clock was set back. */
    async latestRecording(shop: string): Promise<string | null> {
      const newest = db
        .select({ at: t.log.recordedAt })
        .from(t.log)
        .where(eq(t.log.shop, shop))
        .orderBy(desc(t.log.number))
        .limit(1000)
        .as('newest');
      const [found] = await db.select({ at: sql<string | null>`max(${newest.at})` }).from(newest);
      return found?.at ?? null;
    },
    /** Chain, gapless numbers, hashes, files. Empty: all is well. */
    verify: (shop: string) => verifyShop(db, shop),
  };
}
export type Log = ReturnType<typeof logOf>;
