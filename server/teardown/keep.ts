import { isRefusal, parseDocument, Refusal, teardown } from '../../engine/index.ts';
import type { KeptWord } from '../../store/index.ts';
import { keepBasis, nameOf, zKeep } from '../basis/keep.ts';
import type { Desk } from '../desk.ts';
import { given } from '../routes/directive/text.ts';
import { answered } from './answers.ts';
import { compose } from './compose.ts';

/** The three words whose documents this room keeps, with the part of the route they stand under. */
export type RoomWord = Extract<KeptWord, 'structure' | 'floor' | 'teardown'>;

/** Refuses what cannot be read or answered. */
const whole: Readonly<Record<RoomWord, (desk: Desk, shop: string, document: unknown) => Promise<unknown>>> = {
  structure: async (_desk, _shop, document) => teardown.readStructure(document),
  floor: async (_desk, _shop, document) => teardown.readFloor(document),
  teardown: async (desk, shop, document) => requireJob(desk, shop, document),
};

/** A job must plan, also with the work that was recorded on the one it takes the place of. @throws Refusal */
async function requireJob(desk: Desk, shop: string, document: unknown): Promise<void> {
  const { document: alone } = await compose(desk, shop, { document });
  await answered(desk, alone).plan();
  const name = nameOf(String((document as { title?: unknown }).title));
  const work = (await desk.store.bases.get(shop, 'teardown', name)) ? await desk.store.work.list(shop, name) : [];
  if (!work.length) return;
  const own = (alone.recorded as readonly unknown[] | undefined) ?? [];
  try {
    await answered(desk, { ...alone, recorded: [...own, ...work.map((w) => w.record)] }).plan();
  } catch (e) {
    if (!isRefusal(e)) throw e;
    throw new Refusal(e.code, {
      ...e.detail,
      given: `The work recorded on "${name}" does not fit what is to be kept: ${e.detail.given}`,
    });
  }
}

/** Reads a document of the room, refuses what cannot be answered, and keeps it with the name of who did. @throws Refusal */
export async function keepInRoom(desk: Desk, shop: string, word: RoomWord, input: unknown) {
  const { document, ...asked } = parseDocument(zKeep, input, `${word} document to keep`);
  const read = given(document);
  await desk.store.shops.get(shop);
  await whole[word](desk, shop, read);
  return keepBasis(desk, shop, word, { document: read as { title: string }, ...asked });
}

const FIRST: Readonly<Record<string, RoomWord>> = {
  'structure/1': 'structure',
  'floor/1': 'floor',
  'teardown/1': 'teardown',
};
/** The word of this room that a document is for, by its first field; null where it is for none. */
export function roomWordOf(document: unknown): RoomWord | null {
  const first = (document as { sparwright?: unknown } | null)?.sparwright;
  return typeof first === 'string' ? (FIRST[first] ?? null) : null;
}
