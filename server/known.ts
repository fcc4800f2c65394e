import { type Day, parseDay, Refusal } from '../engine/index.ts';
import {
  asKnownSheet,
  type KeptLetter,
  kindWords,
  namesOf,
  recordedWords,
  type Sheet,
  saysOf,
} from '../sheets/index.ts';
import { type Desk, type Gathered, gather } from './desk.ts';
import { PROGRAM } from './version.ts';

/** "As known on" a day, or at an entry by its number. */
export interface AskedKnown {
  readonly known?: unknown;
  readonly known_on?: unknown;
  readonly day?: unknown;
}
export interface Known {
  readonly upTo: number;
  readonly on: Day | null;
  readonly day: Day;
}
const given = (v: unknown): v is string => typeof v === 'string' && v !== '';
const unknownThen = (what: string, remedy: string) =>
  new Refusal('papers.not-known-then', {
    given: what,
    allowed: 'a day or an entry from the first one recorded on',
    remedy,
  });

/**
 * Which entries count: a day stands for the last entry of the gapless sequence recorded by its end. Null if the page
 * is asked for as it is known now.
 * @throws Refusal `papers.not-known-then`, `foundation.not-a-day`
 */
export async function knownAt(desk: Desk, shop: string, asked: AskedKnown): Promise<Known | null> {
  if (!given(asked.known) && !given(asked.known_on)) return null;
  const last = await desk.store.log.last(shop);
  const on = given(asked.known_on) ? parseDay(asked.known_on) : null;
  const upTo = on ? await desk.store.log.lastKnownOn(shop, on) : Number(asked.known);
  if (!Number.isInteger(upTo) || upTo < 1 || upTo > last)
    throw unknownThen(await nothingYet(desk, shop, on, asked.known, last), 'Choose a later day');
  const day = given(asked.day) ? parseDay(asked.day) : (on ?? (await recordedOn(desk, shop, upTo)));
  return { upTo, on, day };
}
async function recordedOn(desk: Desk, shop: string, number: number): Promise<Day> {
  const [entry] = await desk.store.log.read(shop, { after: number - 1, upTo: number });
  return parseDay(entry?.recordedAt.slice(0, 10) ?? desk.today());
}
async function nothingYet(desk: Desk, shop: string, on: Day | null, known: unknown, last: number): Promise<string> {
  if (!on) return `entry "${known}"; the log runs from 1 to ${last}`;
  const first = last ? `the first entry was recorded on ${await recordedOn(desk, shop, 1)}` : 'nothing is recorded yet';
  return `On ${on} this shop knew nothing: ${first}`;
}

/** @throws Refusal `papers.not-known-then` where nothing of the aircraft was recorded by then */
export async function requireKnown(desk: Desk, shop: string, aircraft: string, known: Known): Promise<void> {
  const opened = await desk.store.log.read(shop, { subjects: [aircraft], kinds: ['aircraft'], upTo: known.upTo });
  if (!opened.length)
    throw unknownThen(
      `Nothing of this aircraft was recorded by entry ${known.upTo}${known.on ? `, ${known.on}` : ''}`,
      'Choose a day on which it was in the log',
    );
}
/** The aircraft as it was known then. @throws Refusal `papers.not-known-then` */
export async function gatherKnown(
  desk: Desk,
  shop: string,
  aircraft: string,
  known: Known,
  query: object,
): Promise<Gathered> {
  await requireKnown(desk, shop, aircraft, known);
  return gather(desk, shop, aircraft, { ...query, day: known.day, upTo: known.upTo });
}

/** Letters that are computed again on one page; older ones are listed on theirs. */
const LETTERS = 12;
type Printed = KeptLetter['printed'];

async function lettersThen(desk: Desk, g: Gathered, known: Known): Promise<KeptLetter[]> {
  const log = await desk.store.log.read(g.shop.id, { subjects: [g.thing.id], kinds: ['letter'], upTo: known.upTo });
  const letters = log.slice(-LETTERS).reverse();
  return Promise.all(
    letters.map(async (e): Promise<KeptLetter> => {
      const body = e.body as {
        number: string;
        directive: string;
        pdf_sha256: string;
        program?: string;
        answers?: Printed;
      };
      return {
        number: body.number,
        directive: body.directive,
        day: e.day,
        href: `/api/shops/${g.shop.id}/files/${body.pdf_sha256}`,
        program: body.program ?? 'not stated',
        entry: e.number,
        printed: body.answers ?? [],
        now: await computedAgain(desk, g, body.directive, e.number - 1, e.day),
      };
    }),
  );
}
/** The same papers, computed by this program: everything recorded before the letter was. */
async function computedAgain(
  desk: Desk,
  g: Gathered,
  directive: string,
  upTo: number,
  day: Day,
): Promise<KeptLetter['now']> {
  try {
    const again = await gather(desk, g.shop.id, g.thing.id, { day, upTo });
    return again.assessments.filter((a) => a.directive === directive);
  } catch (e) {
    return { because: e instanceof Refusal ? e.detail.given : 'this version of the program does not read them' };
  }
}

/** A page of the aircraft with the words of what was known then, the letters of that time, and what came later. */
export async function withKnown(desk: Desk, g: Gathered, known: Known, sheet: Sheet): Promise<Sheet> {
  const subjects = await desk.store.aircraft.circle(g.shop.id, g.thing.id);
  const later = await desk.store.log.read(g.shop.id, { subjects, after: known.upTo });
  const names = namesOf(g.model.things);
  return asKnownSheet(sheet, {
    known: known.upTo,
    on: known.on,
    program: PROGRAM,
    letters: await lettersThen(desk, g, known),
    later: later.map((e) => ({
      number: e.number,
      day: e.day,
      kind: `${kindWords(e.kind)}, ${names(e.subject)}`,
      says: saysOf(e.kind, e.body, names),
      recorded: recordedWords(e),
    })),
    names,
  });
}
