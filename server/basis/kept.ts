import { isRefusal, Refusal } from '../../engine/index.ts';
import type { BasisHead, BasisRow, KeptWord } from '../../store/index.ts';
import type { Desk } from '../desk.ts';

const WORDS: Readonly<Record<KeptWord, string>> = {
  usage: 'usage document',
  growth: 'growth document',
  structure: 'structure map',
  floor: 'floor',
  teardown: 'teardown job',
};
export const wordsOf = (of: KeptWord): string => WORDS[of];

/** The document that stands under a name. @throws Refusal `server.not-found`, saying who took it back, if anyone did */
export async function standing(desk: Desk, shop: string, of: KeptWord, name: string, upTo?: number): Promise<BasisRow> {
  const row = await desk.store.bases.get(shop, of, name, upTo);
  if (row) return row;
  const [last] = await desk.store.bases.history(shop, of, name, upTo);
  const gone = last ? `, taken back on ${last.on} by ${last.by}: ${last.because}` : '';
  throw new Refusal('server.not-found', {
    given: `${wordsOf(of)} "${name}"${gone}`,
    allowed: `a ${wordsOf(of)} that this shop keeps`,
    remedy: last ? 'Enter it again, or choose another one' : 'Choose one from the list, or enter it',
  });
}

/** What a document was made for, by its outline: the models it names; none named, it may be any. */
export const modelsOf = ({ outline }: Pick<BasisHead, 'outline'>): readonly string[] =>
  Array.isArray(outline.models) ? outline.models.filter((m) => typeof m === 'string') : [];
const plain = (model: string): string => model.trim().toLowerCase();
export function fits(head: Pick<BasisHead, 'outline'>, model: string | undefined): boolean {
  const models = modelsOf(head);
  return models.length === 0 || (model !== undefined && models.some((m) => plain(m) === plain(model)));
}

/** The kept document that an aircraft is answered with: the one asked for, else the newest that fits its model. */
export type Chosen =
  | { readonly is: 'found'; readonly head: BasisHead; readonly others: readonly BasisHead[] }
  | {
      readonly is: 'missing';
      readonly because: 'none kept' | 'none fits' | 'made for others';
      readonly kept: readonly BasisHead[];
    };
export function chosen(kept: readonly BasisHead[], model: string | undefined, asked: string | undefined): Chosen {
  const fitting = kept.filter((b) => fits(b, model)).sort((a, b) => b.entry - a.entry);
  const head = asked === undefined ? fitting[0] : fitting.find((b) => b.name === asked);
  if (head) return { is: 'found', head, others: fitting.filter((b) => b !== head) };
  const because = kept.length === 0 ? 'none kept' : asked === undefined ? 'none fits' : 'made for others';
  return { is: 'missing', because, kept };
}

/** A kept document as this version reads it, or why it does not. */
export async function readable<T>(read: () => T | Promise<T>): Promise<T | { readonly unread: string }> {
  try {
    return await read();
  } catch (e) {
    if (!isRefusal(e)) throw e;
    return { unread: e.detail.given };
  }
}
