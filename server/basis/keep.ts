import { createHash } from 'node:crypto';
import { z } from 'zod';
import { canonicalJson, parseDocument, Refusal } from '../../engine/index.ts';
import { basisSubject, type KeptWord } from '../../store/index.ts';
import { type Desk, dayOf } from '../desk.ts';
import { onTop } from '../on-top.ts';
import { standing, wordsOf } from './kept.ts';

const zBy = z.string().trim().min(1).max(200);
export const zKeep = z.strictObject({
  document: z.unknown(),
  by: zBy,
  /** Entry of the document that was being changed, 0 for a new one: what another browser kept since is not lost. */
  after: z.int().min(0).optional(),
});
const zWithdraw = z.strictObject({ because: z.string().trim().min(1).max(2000), by: zBy });

/** Words that routes and pages have beside the names of documents: no document goes by one of them. */
const TAKEN = ['choices', 'answer', 'check', 'chance', 'new'];
const LONGEST = 80;

/** "Whimbrel W4, lower spar cap" becomes whimbrel-w4-lower-spar-cap. A title without a Latin letter or figure goes by its hash. */
export function nameOf(title: string): string {
  const plain = title.normalize('NFKD').toLowerCase().replaceAll(/\p{M}/gu, '');
  const name = plain
    .replaceAll(/[^a-z0-9]+/g, '-')
    .slice(0, LONGEST)
    .replaceAll(/^-|-$/g, '');
  if (name === '') return `document-${createHash('sha256').update(title).digest('hex').slice(0, 8)}`;
  return TAKEN.includes(name) ? `${name}-1` : name;
}

const now = () => new Date().toISOString();
const entryOf = (of: KeptWord, name: string, kind: string, body: object, desk: Desk) => ({
  subject: basisSubject(of, name),
  kind,
  day: dayOf(desk, undefined),
  order: 0,
  body,
  schema: kind === 'basis_withdrawn' ? 'basis_withdrawn/1' : `${of}/1`,
  evidence: 'seen',
});

const movedOn = (of: KeptWord, name: string, what: string): Refusal =>
  new Refusal('store.changed-meanwhile', {
    given: `The ${wordsOf(of)} "${name}" ${what}`,
    allowed: 'keeping on top of what was last shown',
    remedy: 'Open it again and bring your change in there, or give yours another title',
  });

/**
 * Keeps a document that has been read and found whole, under the name made of its title; the last one stands.
 * Keeping the same again records nothing.
 * @throws Refusal `store.changed-meanwhile` where another one came in since `after`
 */
export async function keepBasis(
  desk: Desk,
  shop: string,
  of: KeptWord,
  asked: { readonly document: { readonly title: string }; readonly by: string; readonly after?: number | undefined },
): Promise<{ name: string; entry: number }> {
  const { document, by, after } = asked;
  const name = nameOf(document.title);
  await desk.store.shops.get(shop);
  return onTop(desk.store, shop, async (expectLast) => {
    const before = await desk.store.bases.get(shop, of, name);
    if (before && canonicalJson(before.document) === canonicalJson(document)) return { name, entry: before.entry };
    if (after !== undefined && after !== (before?.entry ?? 0))
      throw movedOn(
        of,
        name,
        before ? `was kept by ${before.by} in entry ${before.entry} meanwhile` : 'stands no more',
      );
    const entry = entryOf(of, name, `${of}_basis`, { name, document, by }, desk);
    const [kept] = await desk.store.log.append(shop, [entry], by, now(), { expectLast });
    return { name, entry: kept! };
  });
}
/** Takes a document back. Its history stays, and growth documents that name it say so. @throws Refusal `server.not-found` */
export async function withdrawBasis(desk: Desk, shop: string, of: KeptWord, name: string, input: unknown) {
  const { because, by } = parseDocument(zWithdraw, input, `${of} withdrawal`);
  await desk.store.shops.get(shop);
  return onTop(desk.store, shop, async (expectLast) => {
    await standing(desk, shop, of, name);
    const entry = entryOf(of, name, 'basis_withdrawn', { name, of, because, by }, desk);
    const [kept] = await desk.store.log.append(shop, [entry], by, now(), { expectLast });
    return { name, entry: kept! };
  });
}
