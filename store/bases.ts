import { type SQL, sql } from 'drizzle-orm';
import type { Day } from '../engine/index.ts';
import type { Db } from './database.ts';
import { outlineOf } from './outline.ts';

/** The two words whose documents are answered for an aircraft from its record. */
export type BasisWord = 'usage' | 'growth';
/** All words whose documents a shop keeps. */
export type KeptWord = BasisWord | 'structure' | 'floor' | 'teardown';

/** A document that stands: the last kept under its name, not withdrawn since. */
export interface BasisHead {
  readonly of: KeptWord;
  readonly name: string;
  readonly on: Day;
  readonly by: string;
  readonly entry: number;
  /** The document without its long lists: title, models, uses and the like; see `outlineOf`. */
  readonly outline: Readonly<Record<string, unknown>>;
}
export interface BasisRow extends Omit<BasisHead, 'outline'> {
  readonly document: unknown;
}
/** One entry of a name's history. */
export interface BasisStep {
  readonly entry: number;
  readonly does: 'kept' | 'withdrawn';
  readonly on: Day;
  readonly by: string;
  readonly recordedAt: string;
  readonly title: string;
  readonly because: string;
}
interface Found extends Record<string, unknown> {
  readonly subject: string;
  readonly number: number;
  readonly kind: string;
  readonly day: string;
  readonly hash: string;
  readonly recorded_at: string;
  readonly recorded_by: string;
}
type Fields = Readonly<Record<string, unknown>>;
interface Said {
  readonly by: string;
  readonly because: string;
  readonly outline: Fields;
}

export const basisSubject = (of: KeptWord, name: string): string => `${of}:${name}`;
const KINDS = sql`('usage_basis', 'growth_basis', 'structure_basis', 'floor_basis', 'teardown_basis', 'basis_withdrawn')`;
const FOUND = sql`subject, number, kind, day, hash, recorded_at, recorded_by`;
const text = (x: unknown): string => (typeof x === 'string' ? x : '');
const fields = (x: unknown): Fields => (typeof x === 'object' && x !== null ? (x as Fields) : {});

function saidBy(body: string): Said {
  const { by, because, document } = fields(JSON.parse(body));
  return { by: text(by), because: text(because), outline: outlineOf(document) };
}
/** What an entry says never changes: each is read once. */
const read = new WeakMap<Db, Map<string, Said>>();
const MOST = 1000;

/** Kept by entries of the kinds `usage_basis`, `structure_basis` and so on, body `{name, document, by}`; taken back by `basis_withdrawn`. */
export function basesOf(db: Db) {
  const rows = async <T extends Record<string, unknown>>(query: SQL): Promise<T[]> =>
    (await db.execute<T>(query)).rows as T[];
  const until = (upTo: number | undefined) => (upTo === undefined ? sql`true` : sql`number <= ${upTo}`);
  /** The last entry of each name, withdrawn or not. */
  const lasts = (shop: string, of: KeptWord, upTo: number | undefined, name?: string) =>
    rows<Found>(sql`
      select distinct on (subject) ${FOUND} from log
      where shop = ${shop} and kind in ${KINDS} and ${until(upTo)}
        and ${name === undefined ? sql`starts_with(subject, ${`${of}:`})` : sql`subject = ${basisSubject(of, name)}`}
      order by subject, number desc`);
  const standing = (found: readonly Found[]) => found.filter((r) => r.kind !== 'basis_withdrawn');
  const body = async (shop: string, number: number): Promise<string> =>
    (await rows<{ body: string }>(sql`select body from log where shop = ${shop} and number = ${number}`))[0]!.body;
  const said = async (shop: string, r: Found): Promise<Said> => {
    const known = read.get(db) ?? new Map<string, Said>();
    read.set(db, known);
    const before = known.get(r.hash);
    if (before) return before;
    if (known.size >= MOST) known.clear();
    const made = saidBy(await body(shop, r.number));
    known.set(r.hash, made);
    return made;
  };
  const headOf = (of: KeptWord, r: Found, by: string) => ({
    of,
    name: r.subject.slice(of.length + 1),
    on: r.day as Day,
    by: by || r.recorded_by,
    entry: r.number,
  });

  return {
    /** What stands, by name; as known at an entry, if one is given. */
    async list(shop: string, of: KeptWord, upTo?: number): Promise<BasisHead[]> {
      const made: BasisHead[] = [];
      for (const r of standing(await lasts(shop, of, upTo))) {
        const { by, outline } = await said(shop, r);
        made.push({ ...headOf(of, r, by), outline });
      }
      return made;
    },
    /** The entry with which each name was kept first, or first again after it was taken back. */
    async begun(shop: string, of: KeptWord, upTo?: number): Promise<ReadonlyMap<string, number>> {
      const found = await rows<{ subject: string; number: number }>(sql`
        select k.subject, min(k.number)::int as number from log k
        where k.shop = ${shop} and k.kind in ${KINDS} and k.kind <> 'basis_withdrawn'
          and starts_with(k.subject, ${`${of}:`}) and ${until(upTo)} and k.number > coalesce((
            select max(w.number) from log w
            where w.shop = ${shop} and w.subject = k.subject and w.kind = 'basis_withdrawn' and ${until(upTo)}), 0)
        group by k.subject`);
      return new Map(found.map((r) => [r.subject.slice(of.length + 1), r.number]));
    },
    /** The document that stands under a name, as it was kept; null if none does. */
    async get(shop: string, of: KeptWord, name: string, upTo?: number): Promise<BasisRow | null> {
      const [last] = standing(await lasts(shop, of, upTo, name));
      if (!last) return null;
      const { by, document } = fields(JSON.parse(await body(shop, last.number)));
      return { ...headOf(of, last, text(by)), document };
    },
    /** Everything that was kept and taken back under a name, the newest first. */
    async history(shop: string, of: KeptWord, name: string, upTo?: number): Promise<BasisStep[]> {
      const found = await rows<Found>(sql`
        select ${FOUND} from log
        where shop = ${shop} and kind in ${KINDS} and subject = ${basisSubject(of, name)} and ${until(upTo)}
        order by number desc`);
      const steps: BasisStep[] = [];
      for (const r of found) {
        const { by, because, outline } = await said(shop, r);
        steps.push({
          entry: r.number,
          does: r.kind === 'basis_withdrawn' ? 'withdrawn' : 'kept',
          on: r.day as Day,
          by: by || r.recorded_by,
          recordedAt: r.recorded_at,
          title: text(outline.title),
          because,
        });
      }
      return steps;
    },
  };
}
export type BasisRepository = ReturnType<typeof basesOf>;
