import type { Sheet, Units } from '../../sheets/index.ts';
import type { BasisHead, BasisWord } from '../../store/index.ts';
import type { Desk } from '../desk.ts';
import { withKnown } from '../known.ts';
import { type AircraftAsked, type AskedOfAircraft, aircraftAsked } from './aircraft.ts';
import { readable, standing } from './kept.ts';
import { missingFor } from './missing.ts';

/** A question of the room: a kept document by its name, or one that is kept nowhere; of an aircraft, or for itself. */
export interface AskedInRoom extends AskedOfAircraft {
  readonly name?: string | undefined;
  readonly document?: unknown;
  readonly aircraft?: string | undefined;
}
export interface PageAsked extends AskedOfAircraft {
  readonly units?: Units | undefined;
}

/** The document asked about, not read yet: the one given, or the kept one of that name. @throws Refusal `server.not-found` */
export const givenOf = async (desk: Desk, shop: string, word: BasisWord, asked: AskedInRoom, upTo?: number) =>
  asked.document ?? (await standing(desk, shop, word, asked.name ?? '', upTo)).document;

interface Room<D> {
  readonly word: BasisWord;
  /** Reads the kept document; what this version cannot read is said on the page. */
  readonly read: (document: unknown, of: AircraftAsked) => D | Promise<D>;
  readonly make: (document: D, of: AircraftAsked, basis: Pick<Chosen, 'head' | 'others'>) => Promise<Sheet>;
}
type Chosen = Extract<AircraftAsked['chosen'], { head: BasisHead }>;

/** The page of one aircraft in a room: by the document that fits it, else what is missing; as known then, if asked so. */
export async function pageOfAircraft<D extends object>(
  desk: Desk,
  shop: string,
  aircraft: string,
  asked: AskedOfAircraft,
  { word, read, make }: Room<D>,
): Promise<Sheet> {
  const of = await aircraftAsked(desk, shop, word, aircraft, asked);
  const page = async (): Promise<Sheet> => {
    if (of.chosen.is === 'missing') return missingFor(word, of, of.chosen.because);
    const row = await standing(desk, shop, word, of.chosen.head.name, of.upTo);
    const document = await readable(() => read(row.document, of));
    return 'unread' in document ? missingFor(word, of, 'unread', document.unread) : make(document, of, of.chosen);
  };
  const sheet = await page();
  return of.known ? withKnown(desk, of.g, of.known, sheet) : sheet;
}
