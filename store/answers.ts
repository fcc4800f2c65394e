import { and, asc, eq, inArray, sql } from 'drizzle-orm';
import type { Day } from '../engine/index.ts';
import type { Db } from './database.ts';
import * as t from './schema.ts';

/** Under what an answer is kept: it holds for this part, action and issue as long as neither record nor program changed. */
export interface AnswerKey {
  readonly part: string;
  readonly directive: string;
  readonly issue: number;
  readonly action: string;
  readonly entry: number;
  readonly program: string;
}
export interface NewAnswer extends AnswerKey {
  readonly day: Day;
  readonly result: unknown;
  /** Subjects whose entries it rests on, besides the part. A new entry of one of them makes it stale. */
  readonly touches?: readonly string[];
  /** The aircraft that it belongs to, and its slim form, where the desk keeps them. */
  readonly aircraft?: string;
  readonly line?: unknown;
}
export interface StoredAnswer extends NewAnswer {
  readonly touches: readonly string[];
  readonly stale: boolean;
}

const answerFromRow = ({ shop: _, ...r }: typeof t.answer.$inferSelect): StoredAnswer => ({
  ...r,
  day: r.day as Day,
  result: JSON.parse(r.result),
  line: JSON.parse(r.line),
});

const rowOf = (shop: string, a: NewAnswer): typeof t.answer.$inferInsert => {
  const { part, directive, issue, action, entry, program, day } = a;
  const touches = [...new Set([part, ...(a.touches ?? [])])];
  const key = { shop, part, directive, issue, action, entry, program, day };
  const kept = a.aircraft === undefined ? {} : { aircraft: a.aircraft, line: JSON.stringify(a.line ?? null) };
  return { ...key, touches, stale: false, result: JSON.stringify(a.result), ...kept };
};
const CHUNK = 100;
/** Rows that are not there yet. */
export async function insertAnswers(db: Db, shop: string, answers: readonly NewAnswer[]): Promise<void> {
  const rows = answers.map((a) => rowOf(shop, a));
  for (let i = 0; i < rows.length; i += CHUNK) await db.insert(t.answer).values(rows.slice(i, i + CHUNK));
}

export function answersOf(db: Db) {
  return {
    /** Keeps the newest answer per part, directive and action; one of an earlier entry or day than what is kept stays away. */
    async put(shop: string, answers: readonly NewAnswer[]): Promise<void> {
      await db.transaction(async (tx) => {
        const target = [t.answer.shop, t.answer.part, t.answer.directive, t.answer.action];
        for (const a of answers) {
          const row = rowOf(shop, a);
          const setWhere = sql`(${t.answer.entry}, ${t.answer.day}) <= (${a.entry}, ${a.day}) or ${t.answer.program} <> ${a.program}`;
          await tx.insert(t.answer).values(row).onConflictDoUpdate({ target, set: row, setWhere });
        }
      });
    },
    /** The result kept under exactly this key, or null. */
    async get(shop: string, k: AnswerKey): Promise<unknown | null> {
      const [row] = await db
        .select()
        .from(t.answer)
        .where(
          and(
            eq(t.answer.shop, shop),
            eq(t.answer.part, k.part),
            eq(t.answer.directive, k.directive),
            eq(t.answer.issue, k.issue),
            eq(t.answer.action, k.action),
            eq(t.answer.entry, k.entry),
            eq(t.answer.program, k.program),
          ),
        );
      return row ? JSON.parse(row.result) : null;
    },
    /** Kept answers; those of another program version come back as stale. */
    async list(
      shop: string,
      of: { program: string; parts?: readonly string[]; directive?: string },
    ): Promise<StoredAnswer[]> {
      const rows = await db
        .select()
        .from(t.answer)
        .where(
          and(
            eq(t.answer.shop, shop),
            of.parts === undefined ? undefined : inArray(t.answer.part, [...of.parts]),
            of.directive === undefined ? undefined : eq(t.answer.directive, of.directive),
          ),
        )
        .orderBy(asc(t.answer.part), asc(t.answer.directive), asc(t.answer.action));
      return rows.map(answerFromRow).map((a) => (a.program === of.program ? a : { ...a, stale: true }));
    },
  };
}
export type AnswerRepository = ReturnType<typeof answersOf>;
