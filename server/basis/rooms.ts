import { parseDocument, Refusal } from '../../engine/index.ts';
import type { Sheet, Units } from '../../sheets/index.ts';
import type { BasisWord } from '../../store/index.ts';
import type { Desk } from '../desk.ts';
import { growthDocumentOf, growthPage, growthSheetOf } from '../growth.ts';
import { given } from '../routes/directive/text.ts';
import { usagePage, usageSheetOf } from '../usage.ts';
import type { AskedOfAircraft } from './aircraft.ts';
import { growthChoices, usageChoices } from './choices.ts';
import { keepBasis, zKeep } from './keep.ts';
import { readUsage } from './read.ts';

/** A kept document by its name, or one that is kept nowhere; with an aircraft, composed from its record. */
export interface AskedOfDocument extends AskedOfAircraft {
  readonly name?: string | undefined;
  readonly document?: unknown;
  readonly units?: Units | undefined;
  readonly aircraft?: string | undefined;
}
/** What usage and growth each do in their own way. */
export interface BasisRoom {
  readonly word: BasisWord;
  choices(desk: Desk, shop: string): Promise<unknown>;
  /** Refuses what cannot be answered. */
  whole(desk: Desk, shop: string, document: unknown): Promise<unknown>;
  sheetOf(desk: Desk, shop: string, asked: AskedOfDocument): Promise<Sheet>;
  page(
    desk: Desk,
    shop: string,
    aircraft: string,
    asked: AskedOfAircraft & { units?: Units | undefined },
  ): Promise<Sheet>;
}
export const ROOMS: Readonly<Record<BasisWord, BasisRoom>> = {
  usage: {
    word: 'usage',
    choices: usageChoices,
    whole: async (_desk, _shop, document) => readUsage(document),
    sheetOf: usageSheetOf,
    page: usagePage,
  },
  growth: {
    word: 'growth',
    choices: growthChoices,
    whole: (desk, shop, document) => growthDocumentOf(desk, shop, { document }),
    sheetOf: growthSheetOf,
    page: growthPage,
  },
};

/** The room that a document is for, by its first field. @throws Refusal `foundation.document-invalid` */
export function roomOf(document: unknown): BasisRoom {
  const word = (document as { sparwright?: unknown } | null)?.sparwright;
  if (word === 'usage/1') return ROOMS.usage;
  if (word === 'growth/1') return ROOMS.growth;
  throw new Refusal('foundation.document-invalid', {
    given: `a document whose first field says ${JSON.stringify(word ?? null)}`,
    allowed: 'sparwright: usage/1 or growth/1; structure/1, floor/1 or teardown/1 in their own place',
    remedy: 'Begin from `sparwright example WORD`',
  });
}

/** Reads a document, refuses what cannot be answered, and keeps it with the name of who did. @throws Refusal */
export async function keepDocument(desk: Desk, shop: string, room: BasisRoom, input: unknown) {
  const { document, ...asked } = parseDocument(zKeep, input, `${room.word} document to keep`);
  const read = given(document);
  await desk.store.shops.get(shop);
  await room.whole(desk, shop, read);
  return keepBasis(desk, shop, room.word, { document: read as { title: string }, ...asked });
}
