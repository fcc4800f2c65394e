import type { FastifyInstance } from 'fastify';
import { z } from 'zod';
import { type Day, directive, parseDocument, Refusal, zDay } from '../../../engine/index.ts';
import type { Store } from '../../../store/index.ts';
import { adoption } from '../../demo.ts';
import { type Desk, dayOf, withdrawalOf } from '../../desk.ts';
import { onTop } from '../../on-top.ts';
import { notAdopted } from './issues.ts';
import { parseText, refuseFailing, refuseQuestion } from './text.ts';

const zName = z.string().trim().min(1).max(200);
const zAdopt = z.strictObject({ text: z.string().min(1), by: zName, on: zDay });
const zWithdraw = z.strictObject({
  issue: z.int().min(1).optional(),
  because: z.string().trim().min(1).max(2000),
  by: zName,
  on: zDay.optional(),
});
const now = () => new Date().toISOString();

/** Reads a directive as text, runs its cases, and stores it with name and day. @throws Refusal */
export async function adopt(store: Store, shop: string, input: unknown) {
  const asked = parseDocument(zAdopt, input, 'directive adoption');
  const given = parseText(asked.text);
  refuseQuestion(given);
  const document = directive.readDirective(given);
  refuseFailing(document);
  return onTop(store, shop, async (expectLast) => {
    const known = await store.directives.list(shop);
    if (known.some((d) => d.number === document.number && d.issue === document.issue))
      throw new Refusal('directive.adopted-already', {
        given: `${document.number} issue ${document.issue}, which this shop has adopted`,
        allowed: 'an issue that was not adopted yet',
        remedy: 'Give a changed text the next issue number; nothing adopted is overwritten',
      });
    await store.log.append(shop, [adoption(document, asked.by, asked.on)], asked.by, now(), { expectLast });
    return { number: document.number, issue: document.issue };
  });
}

/** Takes an issue back from a day on, or every issue of a number. History stays. @throws Refusal */
export async function withdraw(store: Store, shop: string, number: string, input: unknown, today: Day) {
  const { issue, because, by, on = today } = parseDocument(zWithdraw, input, 'directive withdrawal');
  await store.shops.get(shop);
  return onTop(store, shop, async (expectLast) => {
    const own = (await store.directives.list(shop)).filter(
      (d) => d.number === number && (issue === undefined || d.issue === issue),
    );
    if (own.length === 0) throw notAdopted(number, issue);
    const back = await store.directives.withdrawn(shop);
    const gone = own.map((d) => withdrawalOf(back, number, d.issue));
    if (gone.every((w) => w !== undefined && w.on <= on))
      throw new Refusal('directive.withdrawn-already', {
        given: `${number}${issue === undefined ? '' : ` issue ${issue}`}, withdrawn on ${gone[0]!.on} by ${gone[0]!.by}`,
        allowed: 'an issue that still stands on that day',
        remedy: 'Look at its history; adopt the next issue if it is to stand again',
      });
    const body = { number, ...(issue === undefined ? {} : { issue }), because, by };
    const entry = { ...adoption({ number }, by, on), kind: 'directive_withdrawn', body };
    await store.log.append(shop, [entry], by, now(), { expectLast });
    return { number, issue: issue ?? null, on };
  });
}

type OfNumber = { Params: { shop: string; number: string } };

/** Adopting and withdrawing, each with name and day. */
export function adoptRoutes(api: FastifyInstance, desk: Desk): void {
  api.post<{ Params: { shop: string } }>('/shops/:shop/directives', async (request) =>
    adopt(desk.store, request.params.shop, request.body),
  );
  api.post<OfNumber>('/shops/:shop/directives/:number/withdraw', async (request) => {
    const { shop, number } = request.params;
    return withdraw(desk.store, shop, number, request.body, dayOf(desk, undefined));
  });
}
