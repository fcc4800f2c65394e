import { type SQL, sql } from 'drizzle-orm';
import type { Day } from '../engine/index.ts';
import { basisSubject } from './bases.ts';
import type { Db } from './database.ts';

/** Work recorded on a teardown job: one record as it stands. */
export interface WorkRow {
  readonly entry: number;
  /** As it was recorded, not read. */
  readonly record: unknown;
  readonly on: Day;
  /** Who entered it. */
  readonly by: string;
  readonly recordedAt: string;
  /** Entry that it corrects; it stands in that one's place. */
  readonly corrects: number | null;
  readonly because: string;
}
/** Everything of a job's work, also what was corrected or taken back. */
export interface WorkStep extends WorkRow {
  readonly does: 'recorded' | 'corrected' | 'taken back';
  /** Entry that corrected it or took it back. */
  readonly replacedBy: number | null;
}
interface Found extends Record<string, unknown> {
  readonly number: number;
  readonly kind: string;
  readonly day: string;
  readonly body: string;
  readonly note: string | null;
  readonly replaces: number | null;
  readonly recorded_at: string;
  readonly recorded_by: string;
}

/** Entries of the kind `teardown_work`, body one record of a teardown document; taken back by `teardown_work_withdrawn`. */
export function workOf(db: Db) {
  const rows = async <T extends Record<string, unknown>>(query: SQL): Promise<T[]> =>
    (await db.execute<T>(query)).rows as T[];
  const until = (upTo: number | undefined) => (upTo === undefined ? sql`true` : sql`number <= ${upTo}`);
  /** Since the job was last taken back: what is kept under its name afterwards is another job. */
  const found = (shop: string, job: string, upTo: number | undefined) => {
    const subject = basisSubject('teardown', job);
    return rows<Found>(sql`
      select number, kind, day, body, note, replaces, recorded_at, recorded_by from log
      where shop = ${shop} and subject = ${subject} and kind in ('teardown_work', 'teardown_work_withdrawn')
        and ${until(upTo)} and number > coalesce((
          select max(number) from log
          where shop = ${shop} and subject = ${subject} and kind = 'basis_withdrawn' and ${until(upTo)}), 0)
      order by number`);
  };
  const rowOf = (r: Found): WorkRow => ({
    entry: r.number,
    record: JSON.parse(r.body),
    on: r.day as Day,
    by: r.recorded_by,
    recordedAt: r.recorded_at,
    corrects: r.replaces,
    because: r.note ?? '',
  });

  return {
    /** What stands of a job's work, in the order in which it was done: a correction stands where the first record stood. */
    async list(shop: string, job: string, upTo?: number): Promise<WorkRow[]> {
      const all = await found(shop, job, upTo);
      const next = new Map(all.flatMap((r) => (r.replaces === null ? [] : [[r.replaces, r] as const])));
      return all.flatMap((first) => {
        if (first.replaces !== null) return [];
        let last = first;
        for (let r = next.get(last.number); r; r = next.get(last.number)) last = r;
        return last.kind === 'teardown_work' ? [rowOf(last)] : [];
      });
    },
    /** All that was recorded, corrected and taken back, the newest first. */
    async history(shop: string, job: string, upTo?: number): Promise<WorkStep[]> {
      const all = await found(shop, job, upTo);
      const next = new Map(all.flatMap((r) => (r.replaces === null ? [] : [[r.replaces, r.number] as const])));
      return all.reverse().map((r) => ({
        ...rowOf(r),
        does: r.kind === 'teardown_work_withdrawn' ? 'taken back' : r.replaces === null ? 'recorded' : 'corrected',
        replacedBy: next.get(r.number) ?? null,
      }));
    },
    /** The last entry of a job, its document or its work; 0 where there is none. What a page has seen of it. */
    async last(shop: string, job: string, upTo?: number): Promise<number> {
      const [r] = await rows<{ n: number | null }>(sql`
        select max(number)::int as n from log
        where shop = ${shop} and subject = ${basisSubject('teardown', job)} and ${until(upTo)}
          and kind in ('teardown_basis', 'basis_withdrawn', 'teardown_work', 'teardown_work_withdrawn')`);
      return r?.n ?? 0;
    },
  };
}
export type WorkRepository = ReturnType<typeof workOf>;
