import type { FastifyInstance } from 'fastify';
import { z } from 'zod';
import { parseDocument, Refusal } from '../../../engine/index.ts';
import { adoption } from '../../demo.ts';
import { type Desk, dayOf } from '../../desk.ts';
import { draftShown } from './issues.ts';

const zName = z.string().trim().min(1).max(200);
const zDraft = z.strictObject({
  number: zName,
  by: zName,
  /** As it stands, whole or not. */
  document: z.union([z.string(), z.record(z.string(), z.unknown())]),
});
type OfNumber = { Params: { shop: string; number: string } };

/** Drafts of directives: kept as given, counted nowhere, gone from the list once adopted or thrown away. */
export function draftRoutes(api: FastifyInstance, desk: Desk): void {
  const { store } = desk;
  const keep = async (shop: string, number: string, by: string, document: unknown) => {
    const entry = {
      ...adoption({ number }, by, dayOf(desk, undefined)),
      kind: 'directive_draft',
      body: { number, document, by },
    };
    const [kept] = await store.log.append(shop, [entry], by, new Date().toISOString());
    return kept!;
  };
  const one = async (shop: string, number: string) => {
    const draft = (await store.directives.drafts(shop)).find((d) => d.number === number);
    if (draft) return draft;
    throw new Refusal('server.not-found', {
      given: `draft "${number}"`,
      allowed: 'a draft that is kept and not adopted',
      remedy: 'Choose one from the list of drafts',
    });
  };

  api.post<{ Params: { shop: string } }>('/shops/:shop/directives/drafts', async (request) => {
    const { number, by, document } = parseDocument(zDraft, request.body, 'directive draft');
    return { number, entry: await keep(request.params.shop, number, by, document) };
  });
  api.get<{ Params: { shop: string } }>('/shops/:shop/directives/drafts', async (request) => {
    await store.shops.get(request.params.shop);
    return (await store.directives.drafts(request.params.shop)).map(draftShown);
  });
  api.get<OfNumber>('/shops/:shop/directives/drafts/:number', async (request) =>
    one(request.params.shop, request.params.number),
  );
  api.delete<OfNumber>('/shops/:shop/directives/drafts/:number', async (request) => {
    const { shop, number } = request.params;
    await one(shop, number);
    await keep(shop, number, 'the desk', null);
    return {};
  });
}
