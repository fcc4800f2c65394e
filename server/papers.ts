import { directive, parseDay, Refusal, record } from '../engine/index.ts';
import { broughtForward, type Closing, closeGap, readPage, type TypedRow, typedHours } from '../intake/index.ts';
import { broughtWords, gapWords, type PapersSheet, papersSheet, type ShownLine, shownLine } from '../sheets/index.ts';
import type { LogEntry } from '../store/index.ts';
import { type Desk, read } from './desk.ts';
import { newEntries } from './entries.ts';
import { type AskedKnown, knownAt, requireKnown } from './known.ts';

/** The aircraft and everything that ever sat in it, through any number of places. */
async function everAboard(desk: Desk, shop: string, aircraft: string): Promise<string[]> {
  const aboard = new Set([aircraft]);
  for (let fresh = [aircraft]; fresh.length > 0; ) {
    const fitted = await desk.store.aircraft.fitments(shop, 'sitsIn', fresh);
    fresh = fitted.map((f) => f.subject).filter((s) => !aboard.has(s));
    for (const s of fresh) aboard.add(s);
  }
  return [...aboard];
}

/** Entries of these subjects, and whatever corrects one of them, also where it was written to another subject. */
async function entriesOf(desk: Desk, shop: string, subjects: readonly string[], upTo: number | undefined) {
  const entries = await desk.store.log.read(shop, { subjects, upTo });
  const standing = new Set((await desk.store.log.read(shop, { subjects, upTo, inForce: true })).map((e) => e.number));
  const replaced = entries.filter((e) => !standing.has(e.number)).map((e) => e.number);
  const corrections = replaced.length ? await desk.store.log.read(shop, { replacing: replaced, upTo }) : [];
  return { entries, corrections };
}

function aircraftIn(model: record.RecordModel, id: string): record.Thing {
  const thing = model.things.get(id);
  if (thing?.kind === 'aircraft') return thing;
  throw new Refusal('server.not-found', {
    given: `aircraft "${id}" on ${model.day}`,
    allowed: 'an aircraft of this record',
    remedy: 'Choose one from the list',
  });
}

/** Every paper of one aircraft, with its findings and the pages that are kept. */
export async function papersOf(desk: Desk, shop: string, aircraft: string, query: AskedKnown): Promise<PapersSheet> {
  const known = await knownAt(desk, shop, query);
  if (known) await requireKnown(desk, shop, aircraft, known);
  const g = await read(desk, shop, aircraft, known ? { day: known.day, upTo: known.upTo } : { day: query.day });
  const thing = aircraftIn(g.model, aircraft);
  const parts = [...g.model.things.values()].filter((x) => x.aircraft === aircraft);
  const mine = new Set([aircraft, ...parts.map((p) => p.id)]);
  const sides = directive.sideFindings(directive.inForce(g.documents, g.day), g.model, mine);
  const subjects = await everAboard(desk, shop, aircraft);
  const upTo = known?.upTo;
  const { entries, corrections } = await entriesOf(desk, shop, subjects, upTo);
  const pages = (await desk.store.pages.list(shop, aircraft)).filter((p) => upTo === undefined || p.entry <= upTo);
  return papersSheet({
    thing,
    model: { ...g.model, findings: [...g.model.findings, ...sides] },
    lives: new Map([thing, ...parts].map((x) => [x.id, record.lifeOf(g.model, x.id, { until: g.day })])),
    entries,
    corrections,
    pages,
    day: g.day,
    last: await desk.store.log.last(shop),
    shop: g.shop,
    known: known && { upTo: known.upTo, on: known.on },
  });
}

export interface RowsAsked {
  readonly rows: readonly TypedRow[];
  readonly paper: NonNullable<record.EntryInput['paper']>;
  readonly evidence: record.Entry['evidence'];
  readonly day_order: 'day_first' | 'month_first';
  /** What the page itself says is brought forward; what the record knows otherwise. */
  readonly brought?: { readonly total_h?: string | undefined; readonly landings?: number | undefined } | undefined;
  readonly close?: readonly { readonly entry: number; readonly how: Closing }[] | undefined;
}
export interface RowsRead {
  readonly lines: readonly ShownLine[];
  readonly brought: string;
  /** Declared gaps that these rows reach into. */
  readonly gaps: readonly { readonly entry: number; readonly words: string }[];
  readonly entries: readonly record.EntryInput[];
}

/** Typed rows as they are understood, added up, and what they would write. Nothing is stored. */
export async function rowsOf(desk: Desk, shop: string, aircraft: string, asked: RowsAsked): Promise<RowsRead> {
  const { model } = await read(desk, shop, aircraft);
  const entries = model.entries;
  const page = (brought: { total_s: number | null; landings: number | null }) =>
    readPage({
      subject: aircraft,
      rows: asked.rows,
      paper: asked.paper,
      evidence: asked.evidence,
      today: parseDay(desk.today()),
      day_order: asked.day_order,
      uses: model.uses,
      existing: entries,
      brought,
    });
  const days = page({ total_s: null, landings: null })
    .lines.flatMap((l) => l.day ?? [])
    .sort();
  const [first, last] = [days[0], days.at(-1)];
  if (!first || !last)
    return {
      lines: page({ total_s: null, landings: null }).lines.map(shownLine),
      brought: broughtWords(NONE),
      gaps: [],
      entries: [],
    };
  const found = broughtForward(entries, aircraft, first);
  const { total_h, landings } = asked.brought ?? {};
  const stated = {
    total_s: total_h ? typedHours(total_h) : found.total_s,
    landings: landings ?? found.landings,
    day: !total_h && landings === undefined ? found.day : null,
  };
  const result = page(stated);
  const gaps = entries.filter(
    (e): e is record.EntryOf<'gap'> =>
      e.kind === 'gap' && e.subject === aircraft && e.body.from <= last && first <= e.body.to,
  );
  const reach = { from: first, to: last };
  const closing = gaps.flatMap((e) => {
    const how = asked.close?.find((c) => String(c.entry) === e.id)?.how;
    return how ? closeGap(e, how, reach, asked.paper, asked.evidence) : [];
  });
  return {
    lines: result.lines.map(shownLine),
    brought: broughtWords(stated),
    gaps: gaps.map((e) => ({ entry: Number(e.id), words: gapWords(e.body) })),
    entries: result.entries.length ? [...closing, ...result.entries] : [],
  };
}
const NONE = { total_s: null, landings: null, day: null };

/** Entries ready to be shown before and after; one that corrects what was corrected since is refused as the log would. */
export async function candidates(desk: Desk, shop: string, input: unknown) {
  const entries = newEntries(input);
  const numbers = entries
    .flatMap((e) => (e.replaces === undefined ? [] : [Number(e.replaces)]))
    .filter(Number.isInteger);
  const [already] = numbers.length ? await desk.store.log.read(shop, { replacing: numbers }) : [];
  if (already) throw correctedBefore(already);
  return entries;
}
const correctedBefore = (by: LogEntry): Refusal =>
  new Refusal('store.entry-replaced', {
    given: `Entry ${by.replaces} has already been corrected by entry ${by.number}, by ${by.recordedBy} on ${by.recordedAt.slice(0, 10)}`,
    allowed: 'one correction of an entry; the next one corrects the correction',
    remedy: 'Look at what it says now, and correct that',
  });
