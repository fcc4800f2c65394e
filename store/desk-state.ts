import { and, asc, eq, inArray, or, sql } from 'drizzle-orm';
import type { Day } from '../engine/index.ts';
import { insertAnswers, type NewAnswer } from './answers.ts';
import type { Db } from './database.ts';
import * as t from './schema.ts';
import { lockShop } from './shops.ts';
import { onlyDirectivesAfter, overtaken } from './stale.ts';

/** What the desk knows of one aircraft: computed up to an entry, by a version of the program, for a day. */
export interface NewDeskState {
  readonly aircraft: string;
  readonly entry: number;
  readonly program: string;
  readonly day: Day;
  /** Subjects whose entries it rests on. A new entry of one of them makes it stale. */
  readonly touches: readonly string[];
  readonly summary: unknown;
}
export interface DeskState extends Omit<NewDeskState, 'touches' | 'summary'> {
  /** Another text whenever what is kept has changed. */
  readonly version: string;
  /** Something came in that it does not know, or another version of the program made it. */
  readonly stale: boolean;
}
export interface PendingAircraft {
  readonly aircraft: string;
  /** `answers`: none, or they do not hold any more; `day`: only their day lies behind. */
  readonly lacks: 'answers' | 'day';
}

/** What is kept can be of any version: a text that does not read is nothing known. */
const read = (text: string): unknown => {
  try {
    return JSON.parse(text);
  } catch {
    return null;
  }
};

export function deskStatesOf(db: Db) {
  return {
    /** The last that is known of every aircraft, whatever version made it; without what was kept, which is large. */
    async list(shop: string, of: { readonly program: string }): Promise<DeskState[]> {
      const s = t.deskState;
      const { aircraft, entry, program, day, stale } = s;
      const rows = await db
        .select({ aircraft, entry, program, day, stale, version: sql<string>`xmin::text` })
        .from(s)
        .where(eq(s.shop, shop));
      return rows.map((r) => ({ ...r, day: r.day as Day, stale: r.stale || r.program !== of.program }));
    },
    /** What was kept of these aircraft, by aircraft; null where it does not read. */
    async summaries(shop: string, aircraft: readonly string[]): Promise<Map<string, unknown>> {
      if (!aircraft.length) return new Map();
      const s = t.deskState;
      const rows = await db
        .select({ aircraft: s.aircraft, summary: s.summary })
        .from(s)
        .where(and(eq(s.shop, shop), sql`${s.aircraft} = any(${sql.param([...aircraft], t.deskState.touches)})`));
      return new Map(rows.map((r) => [r.aircraft, read(r.summary)]));
    },
    /** Aircraft that must be computed, those without an answer that holds first. `reads`: how a summary of this version begins. */
    async pending(
      shop: string,
      of: { readonly program: string; readonly day: Day; readonly reads: string },
    ): Promise<PendingAircraft[]> {
      const s = t.deskState;
      const unread = sql`not starts_with(${s.summary}, ${of.reads})`;
      const lacks = sql<boolean>`(${s.aircraft} is null or ${s.stale} or ${s.program} <> ${of.program} or ${unread})`;
      const rows = await db
        .select({ aircraft: t.aircraft.subject, lacks })
        .from(t.aircraft)
        .leftJoin(s, and(eq(s.shop, t.aircraft.shop), eq(s.aircraft, t.aircraft.subject)))
        .where(and(eq(t.aircraft.shop, shop), or(lacks, sql`${s.day} <> ${of.day}`)))
        .orderBy(sql`${lacks} desc`, asc(t.aircraft.registration));
      return rows.map((r) => ({ aircraft: r.aircraft, lacks: r.lacks ? 'answers' : 'day' }));
    },
    /**
     * Up to which entry an aircraft was computed, if only directives came in since; null: anything may have changed, or
     * it was not computed by this program for this day.
     */
    async behindDirectives(
      shop: string,
      aircraft: string,
      of: { readonly program: string; readonly day: Day; readonly reads: string },
    ): Promise<number | null> {
      const s = t.deskState;
      const mine = and(eq(s.shop, shop), eq(s.aircraft, aircraft), eq(s.program, of.program), eq(s.day, of.day));
      const [row] = await db
        .select({ entry: s.entry, touches: s.touches })
        .from(s)
        .where(and(mine, sql`starts_with(${s.summary}, ${of.reads})`));
      return row && (await onlyDirectivesAfter(db, shop, row.entry, row.touches)) ? row.entry : null;
    },
    /** Aircraft whose summary begins like this are stale from now on: they are computed again. */
    async again(shop: string, begins: string): Promise<void> {
      const s = t.deskState;
      const mine = and(eq(s.shop, shop), eq(s.stale, false), sql`starts_with(${s.summary}, ${begins})`);
      await db.update(s).set({ stale: true }).where(mine);
    },
    /**
     * Keeps all answers of an aircraft, and takes away what older issues or removed parts left behind.
     * False, and nothing is kept, if an entry came in meanwhile that they do not know.
     */
    keep: (shop: string, state: NewDeskState, answers: readonly NewAnswer[]): Promise<boolean> =>
      db.transaction(async (tx) => {
        await lockShop(tx, shop);
        if (await overtaken(tx, shop, state.entry, state.touches)) return false;
        const row = {
          ...state,
          shop,
          stale: false,
          touches: [...state.touches],
          summary: JSON.stringify(state.summary),
        };
        await tx
          .insert(t.deskState)
          .values(row)
          .onConflictDoUpdate({ target: [t.deskState.shop, t.deskState.aircraft], set: row });
        const keys = answers.map((a) => `${a.part}|${a.directive}|${a.action}`);
        const key = sql<string>`${t.answer.part} || '|' || ${t.answer.directive} || '|' || ${t.answer.action}`;
        const mine = eq(t.answer.aircraft, state.aircraft);
        await tx
          .delete(t.answer)
          .where(and(eq(t.answer.shop, shop), keys.length ? or(mine, inArray(key, keys)) : mine));
        await insertAnswers(
          tx,
          shop,
          answers.map((a) => ({ ...a, aircraft: state.aircraft })),
        );
        return true;
      }),
    /** The earliest day after this one on which an entry of these subjects, or a directive, comes into force; null: none. */
    async changesAfter(shop: string, day: Day, subjects: readonly string[]): Promise<Day | null> {
      const [found] = await db
        .select({ day: sql<Day | null>`min(${t.log.day})` })
        .from(t.log)
        .where(and(eq(t.log.shop, shop), sql`${t.log.day} > ${day}`, inArray(t.log.subject, [...subjects, 'shop'])));
      return found?.day ?? null;
    },
  };
}
export type DeskStateRepository = ReturnType<typeof deskStatesOf>;
