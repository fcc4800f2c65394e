import { type Day, directive, isRefusal, type outlook, parseDay, record } from '../engine/index.ts';
import type { LogEntry, NewEntry, Store, WithdrawnRow } from '../store/index.ts';
import { type Answers, answersFor } from './answers.ts';
import { asIfWritten, recordEntries } from './entries.ts';
import type { Hands } from './work/hands.ts';

/** What every route is given. */
export interface Desk {
  readonly store: Store;
  readonly today: () => string;
  /** Threads for what takes a while; absent: it is done where it is asked. */
  readonly hands?: Hands;
}

export interface Gathered extends Answers {
  readonly shop: Awaited<ReturnType<Store['shops']['get']>>;
  /** Entries up to this number are in the answer. */
  readonly known: number;
}

export const dayOf = (desk: Desk, asked: unknown): Day =>
  parseDay(typeof asked === 'string' && asked ? asked : desk.today());

/** The policy of a shop: its own figures where it set any. */
export const policyOf = (settings: Readonly<Record<string, unknown>>): record.Policy =>
  record.zPolicy.parse(settings.policy ?? {});

const MOST = 500;
const readAlready = new Map<string, directive.DirectiveDocument>();
/** Reads an adopted directive once: the same text is the same document, its own cases run once. */
function readKept(document: unknown): directive.DirectiveDocument {
  const text = JSON.stringify(document);
  const known = readAlready.get(text);
  if (known) return known;
  if (readAlready.size >= MOST) readAlready.clear();
  const made = directive.readDirective(document);
  readAlready.set(text, made);
  return made;
}

/** Directives adopted by a shop up to an entry, every issue. One that this version cannot read is never dropped: it becomes a finding. */
export async function adoptedDirectives(desk: Desk, shop: string, upTo = Number.POSITIVE_INFINITY) {
  const documents: directive.DirectiveDocument[] = [];
  const unread: record.Finding[] = [];
  const withdrawn = (await desk.store.directives.withdrawn(shop)).filter((w) => w.entry <= upTo);
  for (const d of await desk.store.directives.list(shop)) {
    if (d.entry > upTo) continue;
    try {
      const withdrawnOn = withdrawalOf(withdrawn, d.number, d.issue)?.on;
      const read = readKept(d.document);
      documents.push(withdrawnOn ? { ...read, withdrawnOn } : read);
    } catch (e) {
      if (!isRefusal(e)) throw e;
      unread.push({
        code: 'directive.does-not-read',
        text: `${d.number} issue ${d.issue}, adopted on ${d.adoptedOn}, cannot be read by this version: treat whatever it looks at as due, not computed.`,
        entries: [String(d.entry)],
        remedy: `Adopt it again in a form that is read. What is wrong: ${e.detail.given}`,
      });
    }
  }
  return { documents, unread };
}

/** The first withdrawal of an issue: of this one, or of the whole number. */
export const withdrawalOf = (all: readonly WithdrawnRow[], number: string, issue: number): WithdrawnRow | undefined =>
  all
    .filter((w) => w.number === number && (w.issue === null || w.issue === issue))
    .sort((a, b) => (a.on < b.on ? -1 : a.on > b.on ? 1 : a.entry - b.entry))[0];

function rateAsked(query: { rate_h_per_year?: unknown }): outlook.OutlookOptions {
  if (query.rate_h_per_year === undefined || query.rate_h_per_year === '') return {};
  const rate = Number(query.rate_h_per_year);
  return Number.isFinite(rate) && rate >= 0 ? { rates_h_per_year: [rate] } : {};
}

interface Asked {
  readonly day?: unknown;
  readonly rate_h_per_year?: unknown;
  /** As known at this entry: nothing later, and no directive adopted later. */
  readonly upTo?: number | undefined;
  /** Entries that are not written, taken as if they were. */
  readonly extra?: readonly NewEntry[] | undefined;
}

/** Subjects whose entries bear on an aircraft: what ever sat in it, and what the entries not yet written speak of. */
async function bearingOn(desk: Desk, shop: string, aircraft: string, extra: readonly NewEntry[]): Promise<string[]> {
  const named = extra.flatMap((e) => [e.subject, ...[(e.body as { into?: string }).into ?? []].flat()]);
  const circles = await Promise.all(
    [...new Set([aircraft, ...named])].map((id) => desk.store.aircraft.circle(shop, id)),
  );
  return [...new Set(circles.flat())];
}

/**
 * An entry that was written to the wrong aircraft is corrected by one of another: here it no longer stands, there it
 * corrects nothing that is known.
 */
export function ownCorrections(log: readonly LogEntry[], standing: readonly LogEntry[]): LogEntry[] {
  const kept = new Set(standing.map((e) => e.number));
  const newestFirst = [...log].sort((a, b) => b.number - a.number);
  for (const e of newestFirst) if (kept.has(e.number) && e.replaces !== undefined) kept.add(e.replaces);
  const mine = log.filter((e) => kept.has(e.number));
  const known = new Set(mine.map((e) => e.number));
  return mine.map(({ replaces, ...e }) => (replaces !== undefined && known.has(replaces) ? { ...e, replaces } : e));
}

/** What the record of an aircraft is made of: entries of it and of everything that ever sat in it, and the directives. */
export async function inputsOf(desk: Desk, shopId: string, aircraft: string, query: Asked = {}) {
  const shop = await desk.store.shops.get(shopId);
  const day = dayOf(desk, query.day);
  const { upTo, extra = [] } = query;
  const subjects = await bearingOn(desk, shopId, aircraft, extra);
  const asked = { subjects: [...subjects, 'shop'], ...(upTo === undefined ? {} : { upTo }) };
  const written = await desk.store.log.read(shopId, asked);
  const added = asIfWritten(extra, await desk.store.log.last(shopId));
  const log = [...written, ...added];
  const replaced = new Set(added.map((e) => e.replaces));
  const standing = [...(await desk.store.log.read(shopId, { ...asked, inForce: true })), ...added].filter(
    (e) => !replaced.has(e.number),
  );
  const entries = record.entriesUpTo(recordEntries(ownCorrections(log, standing)), day);
  const settled = written.findLast((e) => e.kind === 'settings')?.body as typeof shop.settings | undefined;
  const settings = upTo === undefined ? shop.settings : (settled ?? {});
  const source = { day, entries, policy: policyOf(settings), invented: shop.invented };
  const { documents, unread } = await adoptedDirectives(desk, shopId, upTo);
  return { shop, day, source, documents, unread, known: written.at(-1)?.number ?? 0 };
}
export function modelFrom(source: record.RecordSource, unread: readonly record.Finding[]): record.RecordModel {
  const plain = record.modelOf(source);
  return { ...plain, findings: [...plain.findings, ...unread] };
}

/** The record of an aircraft and of everything that ever sat in it, as the log knows it; nothing assessed yet. */
export async function read(desk: Desk, shopId: string, aircraft: string, query: Asked = {}) {
  const { source, unread, ...rest } = await inputsOf(desk, shopId, aircraft, query);
  return { ...rest, model: modelFrom(source, unread) };
}

/** The aircraft with its standings and dates. @throws Refusal */
export async function gather(desk: Desk, shopId: string, aircraft: string, query: Asked = {}): Promise<Gathered> {
  const { shop, day, model, documents, known } = await read(desk, shopId, aircraft, query);
  return { ...answersFor(model, documents, aircraft, day, rateAsked(query)), shop, known };
}
