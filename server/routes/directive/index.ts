import type { FastifyInstance } from 'fastify';
import { z } from 'zod';
import { directive, parseDocument, Refusal, zDay } from '../../../engine/index.ts';
import { directiveListSheet, directiveSheet } from '../../../sheets/index.ts';
import { adoption } from '../../demo.ts';
import { type Desk, dayOf } from '../../desk.ts';
import { checkRoutes } from './check.ts';
import { parseText, refuseFailing, refuseQuestion } from './text.ts';
import { tryRoutes } from './try.ts';
import { wordsRoutes } from './words.ts';

const zAdopt = z.strictObject({ text: z.string().min(1), by: z.string().trim().min(1).max(200), on: zDay });

/** Directives of a shop: the list, one read back, and adopting. Storing is adopting, with name and day. */
export function directiveRoutes(api: FastifyInstance, desk: Desk): void {
  const { store } = desk;
  checkRoutes(api, desk);
  wordsRoutes(api, desk);
  tryRoutes(api, desk);
  api.get<{ Params: { shop: string } }>('/shops/:shop/directives', async (request) => {
    const shop = await store.shops.get(request.params.shop);
    return directiveListSheet({ rows: await store.directives.list(shop.id), shop, day: dayOf(desk, undefined) });
  });
  api.get<{ Params: { shop: string; number: string }; Querystring: { issue?: string } }>(
    '/shops/:shop/directives/:number',
    async (request) => {
      const rows = (await store.directives.list(request.params.shop)).filter((d) => d.number === request.params.number);
      const row = rows.find((d) => String(d.issue) === request.query.issue) ?? rows.at(-1);
      if (!row)
        throw new Refusal('directive.not-adopted', {
          given: `directive "${request.params.number}"`,
          allowed: 'a directive that this shop adopted',
          remedy: 'Adopt it first, or choose one from the list',
        });
      const document = directive.readDirective(row.document);
      return directiveSheet({
        document,
        readBack: directive.readBack(document),
        cases: directive.runCases(document),
        adopted: { by: row.adoptedBy, on: row.adoptedOn },
        day: dayOf(desk, undefined),
        invented: (await store.shops.get(request.params.shop)).invented,
      });
    },
  );
  api.post<{ Params: { shop: string } }>('/shops/:shop/directives', async (request) => {
    const { text, by, on } = parseDocument(zAdopt, request.body, 'directive adoption');
    const given = parseText(text);
    refuseQuestion(given);
    const document = directive.readDirective(given);
    const known = await store.directives.list(request.params.shop);
    if (known.some((d) => d.number === document.number && d.issue === document.issue))
      throw new Refusal('directive.adopted-already', {
        given: `${document.number} issue ${document.issue}, which this shop has adopted`,
        allowed: 'an issue that was not adopted yet',
        remedy: 'Give a changed text the next issue number; nothing adopted is overwritten',
      });
    refuseFailing(document);
    await store.log.append(request.params.shop, [adoption(document, by, on)], by, new Date().toISOString());
    return { number: document.number, issue: document.issue };
  });
}
