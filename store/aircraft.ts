import { and, asc, eq, ilike, inArray, or, sql } from 'drizzle-orm';
import type { Day } from '../engine/index.ts';
import type { Db } from './database.ts';
import * as t from './schema.ts';

export interface AircraftRow {
  readonly id: string;
  readonly registration: string;
  readonly type: string;
  readonly model: string;
  readonly serial: string;
  readonly built: string;
  readonly owner: string | null;
  readonly base: string | null;
  readonly lastDay: Day | null;
  readonly lastTotal_s: number | null;
  readonly lastLandings: number | null;
  /** Number of the entry of the last reading. */
  readonly lastReading: number | null;
  /** Number of the newest entry of this aircraft. */
  readonly lastNumber: number;
}
export interface PartRow {
  readonly id: string;
  readonly part: string;
  readonly hand: 'left' | 'right' | 'none';
  readonly partNumber: string | null;
  readonly serial: string | null;
  readonly stamp: string | null;
  readonly built: string | null;
  readonly sitsIn: string | null;
  readonly place: string | null;
  readonly since: string | null;
  readonly lastNumber: number;
}
export interface FitmentRow {
  readonly subject: string;
  readonly sitsIn: string;
  readonly place: string;
  readonly from: string;
  readonly to: string | null;
  readonly entry: number;
}

const aircraftFromRow = (r: typeof t.aircraft.$inferSelect): AircraftRow => ({
  id: r.subject,
  registration: r.registration,
  type: r.type,
  model: r.model,
  serial: r.serial,
  built: r.built,
  owner: r.owner,
  base: r.base,
  lastDay: r.readingDay as Day | null,
  lastTotal_s: r.readingTotal_s,
  lastLandings: r.readingLandings,
  lastReading: r.readingNumber,
  lastNumber: r.lastNumber,
});
const partFromRow = ({ shop: _, subject, ...row }: typeof t.part.$inferSelect): PartRow => ({ id: subject, ...row });
const literal = (text: string) => `%${text.replaceAll(/[\\%_]/g, '\\$&')}%`;

export function aircraftOf(db: Db) {
  const fitments = async (shop: string, column: 'subject' | 'sitsIn', of: readonly string[]): Promise<FitmentRow[]> => {
    const rows = await db
      .select()
      .from(t.fitment)
      .where(and(eq(t.fitment.shop, shop), inArray(t.fitment[column], [...of])))
      .orderBy(asc(t.fitment.fromDay), asc(t.fitment.number));
    return rows.map((r) => ({
      subject: r.subject,
      sitsIn: r.sitsIn,
      place: r.place,
      from: r.fromDay,
      to: r.toDay,
      entry: r.number,
    }));
  };

  return {
    /** All aircraft, or those with these words in registration, serial, model, type, owner or base. */
    async list(shop: string, search?: string): Promise<AircraftRow[]> {
      const { registration, serial, model, type, owner, base } = t.aircraft;
      const words = (search ?? '').split(/\s+/).filter(Boolean);
      const each = words.map((w) =>
        or(...[registration, serial, model, type, owner, base].map((c) => ilike(c, literal(w)))),
      );
      const rows = await db
        .select()
        .from(t.aircraft)
        .where(and(eq(t.aircraft.shop, shop), ...each))
        .orderBy(asc(registration), asc(t.aircraft.subject));
      return rows.map(aircraftFromRow);
    },
    async get(shop: string, subject: string): Promise<AircraftRow | null> {
      const [row] = await db
        .select()
        .from(t.aircraft)
        .where(and(eq(t.aircraft.shop, shop), eq(t.aircraft.subject, subject)));
      return row ? aircraftFromRow(row) : null;
    },
    async parts(shop: string, of?: { sitsIn?: string; subjects?: readonly string[] }): Promise<PartRow[]> {
      const rows = await db
        .select()
        .from(t.part)
        .where(
          and(
            eq(t.part.shop, shop),
            of?.sitsIn === undefined ? undefined : eq(t.part.sitsIn, of.sitsIn),
            of?.subjects === undefined ? undefined : inArray(t.part.subject, [...of.subjects]),
          ),
        )
        .orderBy(asc(t.part.part), asc(t.part.hand), asc(t.part.subject));
      return rows.map(partFromRow);
    },
    /** The aircraft and everything that was ever fitted in it, through any number of places, both ways. */
    async circle(shop: string, aircraft: string): Promise<string[]> {
      const { rows } = await db.execute<{ id: string }>(sql`
        with recursive near (id) as (
          select ${aircraft}::text
          union
          select case when f.subject = near.id then f.sits_in else f.subject end
          from fitment f join near on f.shop = ${shop} and (f.subject = near.id or f.sits_in = near.id)
        ) select id from near`);
      return rows.map((r) => r.id);
    },
    fitments,
  };
}
export type AircraftRepository = ReturnType<typeof aircraftOf>;
