import type { FastifyInstance } from 'fastify';
import { type Day, directive } from '../../../engine/index.ts';
import { directiveListSheet, directiveSheet } from '../../../sheets/index.ts';
import { type Desk, dayOf } from '../../desk.ts';
import { adoptRoutes } from './adopt.ts';
import { checkRoutes } from './check.ts';
import { exportRoutes } from './document.ts';
import { draftRoutes } from './drafts.ts';
import { draftShown, issuesOf, notAdopted } from './issues.ts';
import { tryRoutes } from './try.ts';
import { wordsRoutes } from './words.ts';

/** Directives of a shop: the list, one read back with its history, and all that is done with them. */
export function directiveRoutes(api: FastifyInstance, desk: Desk): void {
  for (const routes of [adoptRoutes, checkRoutes, draftRoutes, exportRoutes, tryRoutes, wordsRoutes]) routes(api, desk);
  const { store } = desk;
  api.get<{ Params: { shop: string }; Querystring: { day?: string } }>('/shops/:shop/directives', async (request) => {
    const shop = await store.shops.get(request.params.shop);
    const day = dayOf(desk, request.query.day);
    const issues = (await issuesOf(store, shop.id, day)).map((i) => i.shown);
    const drafts = (await store.directives.drafts(shop.id)).map(draftShown);
    return directiveListSheet({ issues, drafts, shop, day });
  });
  api.get<{ Params: { shop: string; number: string }; Querystring: { issue?: string; day?: string } }>(
    '/shops/:shop/directives/:number',
    async (request) => {
      const { shop, number } = request.params;
      const { issue, day } = request.query;
      return directivePage(desk, shop, number, { issue, day: dayOf(desk, day) });
    },
  );
}

async function directivePage(
  desk: Desk,
  shopId: string,
  number: string,
  asked: { issue?: string | undefined; day: Day },
) {
  const shop = await desk.store.shops.get(shopId);
  const own = (await issuesOf(desk.store, shop.id, asked.day)).filter((i) => i.row.number === number);
  const standing = own.findLast((i) => i.shown.state?.is === 'in force') ?? own.at(-1);
  const chosen = asked.issue === undefined ? standing : own.find((i) => String(i.row.issue) === asked.issue);
  if (!chosen) throw notAdopted(number, asked.issue);
  const document = chosen.document ?? directive.readDirective(chosen.row.document);
  const before = own.filter((i) => i.row.issue < document.issue).at(-1);
  const draft = (await desk.store.directives.drafts(shop.id)).find((d) => d.number === number);
  return directiveSheet({
    document,
    readBack: directive.readBack(document),
    cases: directive.runCases(document),
    adopted: { by: chosen.row.adoptedBy, on: chosen.row.adoptedOn },
    day: asked.day,
    invented: shop.invented,
    history: {
      shop: shop.id,
      issues: own.map((i) => i.shown),
      draft: draft ? draftShown(draft) : null,
      changes: before?.document
        ? { was: `issue ${before.row.issue}`, fields: directive.diffOf(before.document, document) }
        : null,
    },
  });
}
