import { and, eq, gt, inArray, sql } from 'drizzle-orm';
import { parseHours } from '../engine/index.ts';
import type { Db } from './database.ts';
import { entryFromRow, type LogEntry } from './entry.ts';
import * as t from './schema.ts';

type Body = Record<string, unknown>;
const text = (v: unknown): string | null => (typeof v === 'string' ? v : null);
const count = (v: unknown): number | null => (typeof v === 'number' ? v : null);
const seconds = (v: unknown): number | null => (typeof v === 'number' || typeof v === 'string' ? parseHours(v) : null);
const body = (e: LogEntry) => e.body as Body;

/** Entries of these subjects that no later entry replaces, in the order of the record. */
async function inForce(db: Db, shop: string, subjects: readonly string[]): Promise<Map<string, LogEntry[]>> {
  const rows = await db
    .select()
    .from(t.log)
    .where(
      and(
        eq(t.log.shop, shop),
        inArray(t.log.subject, [...subjects]),
        sql`not exists (select 1 from log as later where later.shop = ${t.log.shop} and later.replaces = ${t.log.number})`,
      ),
    )
    .orderBy(t.log.day, t.log.order, t.log.number);
  const bySubject = new Map<string, LogEntry[]>();
  for (const row of rows) {
    const entries = bySubject.get(row.subject);
    if (entries) entries.push(entryFromRow(row));
    else bySubject.set(row.subject, [entryFromRow(row)]);
  }
  return bySubject;
}

function latestAttributes(entries: readonly LogEntry[], opened: LogEntry): Record<string, string | null> {
  const now: Record<string, string | null> = {};
  for (const [name, value] of Object.entries(body(opened))) now[name] = text(value);
  for (const e of entries) if (e.kind === 'attribute') now[String(body(e).name)] = text(body(e).value);
  return now;
}

function aircraftRow(shop: string, subject: string, entries: LogEntry[]): typeof t.aircraft.$inferInsert | null {
  const opened = entries.find((e) => e.kind === 'aircraft');
  if (!opened) return null;
  const now = latestAttributes(entries, opened);
  const readings = entries.filter((e) => e.kind === 'reading');
  const total = readings.findLast((e) => body(e).total_h !== undefined);
  const landings = readings.findLast((e) => count(body(e).landings) !== null);
  const last = readings.at(-1);
  return {
    shop,
    subject,
    registration: now.registration ?? '',
    type: now.type ?? '',
    model: now.model ?? '',
    serial: now.serial ?? '',
    built: now.built ?? '',
    owner: now.owner ?? null,
    base: now.base ?? null,
    readingDay: last?.day ?? null,
    readingTotal_s: total ? seconds(body(total).total_h) : null,
    readingLandings: landings ? count(body(landings).landings) : null,
    readingNumber: last?.number ?? null,
    lastNumber: Math.max(...entries.map((e) => e.number)),
  };
}

function fitmentRows(shop: string, subject: string, entries: LogEntry[]): (typeof t.fitment.$inferInsert)[] {
  const rows: (typeof t.fitment.$inferInsert)[] = [];
  for (const e of entries) {
    if (e.kind !== 'fitment' && e.kind !== 'removal') continue;
    const open = rows.at(-1);
    if (open && open.toDay === null) open.toDay = e.day;
    if (e.kind === 'fitment')
      rows.push({
        shop,
        subject,
        number: e.number,
        sitsIn: String(body(e).into),
        place: String(body(e).place),
        fromDay: e.day,
        toDay: null,
      });
  }
  return rows;
}

function partRow(shop: string, subject: string, entries: LogEntry[], fitments: (typeof t.fitment.$inferInsert)[]) {
  const opened = entries.find((e) => e.kind === 'part');
  if (!opened) return null;
  const now = latestAttributes(entries, opened);
  const seat = fitments.find((f) => f.toDay === null);
  const hand = now.hand === 'left' || now.hand === 'right' ? now.hand : 'none';
  return {
    shop,
    subject,
    part: now.part ?? '',
    hand: hand as 'left' | 'right' | 'none',
    partNumber: now.part_number ?? null,
    serial: now.serial ?? null,
    stamp: now.stamp ?? null,
    built: now.built ?? null,
    sitsIn: seat?.sitsIn ?? null,
    place: seat?.place ?? null,
    since: seat?.fromDay ?? null,
    lastNumber: Math.max(...entries.map((e) => e.number)),
  };
}

/** Directives with their drafts and withdrawals, letters, mappings, pages, requests and settings follow entry by entry. */
export async function projectPapers(db: Db, shop: string, entries: readonly LogEntry[]): Promise<void> {
  for (const e of entries) {
    const b = body(e);
    if (e.kind === 'directive') {
      const document = b.document as Body;
      const row = {
        shop,
        directive: String(document.number),
        issue: Number(document.issue),
        entry: e.number,
        day: e.day,
        adoptedBy: text(b.by) ?? e.recordedBy,
        document: JSON.stringify(document),
      };
      const target = [t.directive.shop, t.directive.directive, t.directive.issue];
      await db.insert(t.directive).values(row).onConflictDoUpdate({ target, set: row });
      await dropDraft(db, shop, row.directive, row.issue);
    } else if (e.kind === 'directive_withdrawn') {
      const row = {
        shop,
        entry: e.number,
        directive: String(b.number),
        issue: count(b.issue),
        day: e.day,
        because: text(b.because) ?? '',
        withdrawnBy: text(b.by) ?? e.recordedBy,
      };
      await db
        .insert(t.directiveWithdrawn)
        .values(row)
        .onConflictDoUpdate({ target: [t.directiveWithdrawn.shop, t.directiveWithdrawn.entry], set: row });
    } else if (e.kind === 'directive_draft') {
      const row = {
        shop,
        directive: String(b.number),
        entry: e.number,
        day: e.day,
        keptBy: text(b.by) ?? e.recordedBy,
        document: JSON.stringify(b.document ?? null),
      };
      const own = and(eq(t.directiveDraft.shop, shop), eq(t.directiveDraft.directive, row.directive));
      await db.delete(t.directiveDraft).where(own);
      // A draft of nothing throws the last one away; the log keeps both.
      if (b.document !== null && b.document !== undefined) await db.insert(t.directiveDraft).values(row);
    } else if (e.kind === 'letter') {
      const row = {
        shop,
        letter: String(b.number),
        entry: e.number,
        aircraft: e.subject,
        directive: text(b.directive) ?? '',
        day: e.day,
        pdfSha256: String(b.pdf_sha256),
        issuedBy: e.recordedBy,
      };
      await db
        .insert(t.letter)
        .values(row)
        .onConflictDoUpdate({ target: [t.letter.shop, t.letter.letter], set: row });
    } else if (e.kind === 'mapping') {
      const row = { shop, shape: String(b.shape), entry: e.number, mapping: JSON.stringify(b.mapping ?? null) };
      await db
        .insert(t.mapping)
        .values(row)
        .onConflictDoUpdate({ target: [t.mapping.shop, t.mapping.shape], set: row });
    } else if (e.kind === 'page') {
      const row = {
        shop,
        entry: e.number,
        aircraft: e.subject,
        sha256: String(b.sha256),
        mediaType: String(b.media_type),
        title: String(b.title),
        page: String(b.page),
      };
      await db
        .insert(t.page)
        .values(row)
        .onConflictDoUpdate({ target: [t.page.shop, t.page.entry], set: row });
    } else if (e.kind === 'request') {
      const row = {
        shop,
        entry: e.number,
        aircraft: e.subject,
        asks: String(b.asks),
        day: e.day,
        words: String(b.words),
        askedBy: text(b.by) ?? e.recordedBy,
      };
      await db
        .insert(t.request)
        .values(row)
        .onConflictDoUpdate({ target: [t.request.shop, t.request.entry], set: row });
    } else if (e.kind === 'settings')
      await db
        .update(t.shop)
        .set({ settings: JSON.stringify(b) })
        .where(eq(t.shop.id, shop));
  }
}

/** An adopted issue ends the draft it was written from: the one of this number, unless that is for a later issue. */
async function dropDraft(db: Db, shop: string, number: string, issue: number): Promise<void> {
  const own = and(eq(t.directiveDraft.shop, shop), eq(t.directiveDraft.directive, number));
  const [draft] = await db.select().from(t.directiveDraft).where(own);
  if (!draft) return;
  const forIssue = count((JSON.parse(draft.document) as { issue?: unknown } | null)?.issue);
  if (forIssue === null || forIssue <= issue) await db.delete(t.directiveDraft).where(own);
}

const PAPERS = [t.directive, t.directiveWithdrawn, t.directiveDraft, t.letter, t.mapping, t.page, t.request] as const;
const PAPER_KINDS = [
  'directive',
  'directive_withdrawn',
  'directive_draft',
  'letter',
  'mapping',
  'page',
  'request',
  'settings',
];
const BY_SUBJECT = [t.aircraft, t.part, t.fitment] as const;

/** Makes the tables of these subjects anew from their entries. The same call serves an append and a rebuild. */
export async function projectSubjects(db: Db, shop: string, subjects: readonly string[]): Promise<void> {
  if (subjects.length === 0) return;
  const entries = await inForce(db, shop, subjects);
  for (const table of BY_SUBJECT)
    await db.delete(table).where(and(eq(table.shop, shop), inArray(table.subject, [...subjects])));
  for (const [subject, all] of entries) {
    const aircraft = aircraftRow(shop, subject, all);
    if (aircraft) await db.insert(t.aircraft).values(aircraft);
    const fitments = fitmentRows(shop, subject, all);
    if (fitments.length > 0) await db.insert(t.fitment).values(fitments);
    const part = partRow(shop, subject, all, fitments);
    if (part) await db.insert(t.part).values(part);
  }
}

/** Throws the projections of a shop away and makes them again from its log; stored answers become stale. */
export async function rebuild(db: Db, shop: string): Promise<void> {
  for (const table of [...BY_SUBJECT, ...PAPERS]) await db.delete(table).where(eq(table.shop, shop));
  await db.execute(sql`update totals set stale = true where shop = ${shop}`);
  for (const table of [t.answer, t.deskState]) await db.update(table).set({ stale: true }).where(eq(table.shop, shop));
  const subjects = await db.selectDistinct({ subject: t.log.subject }).from(t.log).where(eq(t.log.shop, shop));
  const names = subjects.map((s) => s.subject);
  for (let i = 0; i < names.length; i += 200) await projectSubjects(db, shop, names.slice(i, i + 200));
  for (let after = 0; ; ) {
    const rows = await db
      .select()
      .from(t.log)
      .where(and(eq(t.log.shop, shop), inArray(t.log.kind, PAPER_KINDS), gt(t.log.number, after)))
      .orderBy(t.log.number)
      .limit(200);
    if (rows.length === 0) return;
    await projectPapers(db, shop, rows.map(entryFromRow));
    after = rows.at(-1)!.number;
  }
}
