import { and, eq, inArray, or, sql } from 'drizzle-orm';
import type { Db } from './database.ts';
import type { LogRow } from './entry.ts';
import * as t from './schema.ts';

/** Kinds that no standing rests on. */
const TOUCHES_NOTHING: readonly string[] = [
  'letter',
  'mapping',
  'directive_draft',
  'page',
  'request',
  'usage_basis',
  'growth_basis',
  'structure_basis',
  'floor_basis',
  'teardown_basis',
  'basis_withdrawn',
  'teardown_work',
  'teardown_work_withdrawn',
];
/** Kinds that every aircraft of the shop may rest on. */
const TOUCHES_ALL: readonly string[] = ['directive', 'directive_withdrawn', 'ruling', 'settings'];

type Touching = Pick<LogRow, 'subject' | 'kind' | 'body' | 'replaces'>;
export interface Touched {
  /** Every aircraft of the shop. */
  readonly all: boolean;
  /** Directives whose answers are touched, besides those of the subjects; null: all. */
  readonly directives: readonly string[] | null;
  readonly subjects: readonly string[];
}

interface NamedDirective {
  readonly number?: unknown;
  readonly document?: { readonly number?: unknown; readonly supersedes?: readonly { readonly number?: unknown }[] };
}
function directivesNamed(row: Touching): string[] {
  const body = JSON.parse(row.body) as NamedDirective;
  const named = [body.number, body.document?.number, ...(body.document?.supersedes ?? []).map((s) => s.number)];
  return named.filter((n): n is string => typeof n === 'string');
}
const holder = (row: Touching): string[] => {
  if (row.kind !== 'fitment') return [];
  const into = (JSON.parse(row.body) as { into?: unknown }).into;
  return typeof into === 'string' ? [into] : [];
};

/** What these rows touch: their subjects, what a part was fitted into, the subjects of what they correct. */
export async function touchedBy(db: Db, shop: string, rows: readonly Touching[]): Promise<Touched> {
  const touching = rows.filter((r) => !TOUCHES_NOTHING.includes(r.kind));
  const wide = touching.filter((r) => TOUCHES_ALL.includes(r.kind) || r.subject === 'shop');
  const own = touching.filter((r) => !wide.includes(r));
  const replaced = await rowsOf(
    db,
    shop,
    own.flatMap((r) => r.replaces ?? []),
  );
  const only = wide.every((r) => r.kind.startsWith('directive'));
  return {
    all: wide.length > 0,
    directives: only ? wide.flatMap(directivesNamed) : null,
    subjects: [...new Set([...own, ...replaced].flatMap((r) => [r.subject, ...holder(r)]))],
  };
}
async function rowsOf(db: Db, shop: string, numbers: readonly number[]): Promise<Touching[]> {
  if (!numbers.length) return [];
  return db
    .select({ subject: t.log.subject, kind: t.log.kind, body: t.log.body, replaces: t.log.replaces })
    .from(t.log)
    .where(and(eq(t.log.shop, shop), inArray(t.log.number, [...numbers])));
}

/** Stored answers, and the state of the aircraft, that these entries touch are stale from now on. */
export async function makeStale(db: Db, shop: string, rows: readonly Touching[]): Promise<void> {
  const touched = await touchedBy(db, shop, rows);
  const { all, directives, subjects } = touched;
  await staleTotals(
    db,
    shop,
    subjects,
    rows.some((r) => r.kind === 'settings'),
  );
  if (!all && !subjects.length) return;
  const near = (column: typeof t.answer.touches | typeof t.deskState.touches) =>
    subjects.length ? sql`${column} && ${sql.param([...subjects], t.answer.touches)}` : sql`false`;
  const named = directives?.length ? inArray(t.answer.directive, [...directives]) : undefined;
  await db
    .update(t.answer)
    .set({ stale: true })
    .where(
      and(
        eq(t.answer.shop, shop),
        eq(t.answer.stale, false),
        directives === null ? undefined : or(near(t.answer.touches), named),
      ),
    );
  await db
    .update(t.deskState)
    .set({ stale: true })
    .where(and(eq(t.deskState.shop, shop), eq(t.deskState.stale, false), all ? undefined : near(t.deskState.touches)));
}

/** Totals of the aircraft that these subjects are, or have ever sat in. */
async function staleTotals(db: Db, shop: string, subjects: readonly string[], all: boolean): Promise<void> {
  if (!all && !subjects.length) return;
  await db.execute(sql`
    with recursive near (id) as (
      select unnest(${sql.param([...subjects], t.answer.touches)}::text[])
      union
      select f.sits_in from near join fitment f on f.shop = ${shop} and f.subject = near.id
    )
    update totals set stale = true
    where shop = ${shop} and not stale and (${all} or aircraft in (select id from near))`);
}

/** More than this, and all is computed again. */
const MOST = 500;
/** True if directives came in after this entry, and nothing else that touches an answer which rests on these subjects. */
export async function onlyDirectivesAfter(
  db: Db,
  shop: string,
  entry: number,
  touches: readonly string[],
): Promise<boolean> {
  const l = t.log;
  const near = sql`(${l.subject} = 'shop' or ${l.subject} = any(${sql.param([...touches], t.answer.touches)}))`;
  const maybe = or(near, inArray(l.kind, [...TOUCHES_ALL, 'fitment']), sql`${l.replaces} is not null`);
  const rows = await db
    .select({ subject: l.subject, kind: l.kind, body: l.body, replaces: l.replaces })
    .from(l)
    .where(and(eq(l.shop, shop), sql`${l.number} > ${entry}`, maybe))
    .limit(MOST);
  if (rows.length === MOST) return false;
  const { all, directives, subjects } = await touchedBy(db, shop, rows);
  return all && directives !== null && !subjects.some((s) => touches.includes(s));
}

/** True if an entry after this one touches an answer that rests on these subjects. */
export async function overtaken(db: Db, shop: string, entry: number, touches: readonly string[]): Promise<boolean> {
  const rows = await db
    .select({ subject: t.log.subject, kind: t.log.kind, body: t.log.body, replaces: t.log.replaces })
    .from(t.log)
    .where(and(eq(t.log.shop, shop), sql`${t.log.number} > ${entry}`));
  const touched = await touchedBy(db, shop, rows);
  return touched.all || touched.subjects.some((s) => touches.includes(s));
}
