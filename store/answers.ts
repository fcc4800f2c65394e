import { and, asc, eq, inArray } from 'drizzle-orm';
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
}
export interface StoredAnswer extends NewAnswer {
  readonly touches: readonly string[];
  readonly stale: boolean;
}

const answerFromRow = ({ shop: _, ...r }: typeof t.answer.$inferSelect): StoredAnswer => ({
  ...r,
  day: r.day as Day,
  result: JSON.parse(r.result),
});

export function answersOf(db: Db) {
  return {
    /** Keeps the newest answer per part, directive and action. */
    async put(shop: string, answers: readonly NewAnswer[]): Promise<void> {
      await db.transaction(async (tx) => {
        for (const a of answers) {
          const touches = [...new Set([a.part, ...(a.touches ?? [])])];
          const { part, directive, issue, action, entry, program, day } = a;
          const result = JSON.stringify(a.result);
          const row = { shop, part, directive, issue, action, entry, program, day, touches, stale: false, result };
          const target = [t.answer.shop, t.answer.part, t.answer.directive, t.answer.action];
          await tx.insert(t.answer).values(row).onConflictDoUpdate({ target, set: row });
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
