import type { FastifyInstance } from 'fastify';
import { z } from 'zod';
import { type Day, parseDocument, Refusal } from '../../engine/index.ts';
import { type Desk, dayOf } from '../desk.ts';
import type { Keeper } from '../fleet/keeper.ts';
import { duePage, fleetPage, fleetText, readingsPage } from '../fleet/sheets.ts';
import { FILE_FORMATS, sendSheet } from '../table-file.ts';

const zDue = z.strictObject({
  from: z.string().optional(),
  to: z.string().optional(),
  day: z.string().optional(),
  format: z.enum(['sheet', ...FILE_FORMATS]).default('sheet'),
});
const zAsk = z.strictObject({
  requests: z
    .array(z.strictObject({ aircraft: z.string().min(1).max(80), words: z.string().trim().min(1).max(4000) }))
    .min(1)
    .max(5000),
  by: z.string().trim().min(1).max(200),
});
interface OfShop {
  Params: { shop: string };
  Querystring: { day?: string };
}

/** Who is due when, from stored answers; what they lack is computed in the background. */
export function fleetRoutes(api: FastifyInstance, desk: Desk, keeper: Keeper): void {
  const { store } = desk;
  api.get<OfShop>('/shops/:shop/fleet', async (request, reply) => {
    keeper.look(request.params.shop);
    const sheet = await fleetPage(store, request.params.shop, dayOf(desk, request.query.day), dayOf(desk, undefined));
    return reply.type('application/json; charset=utf-8').send(fleetText(sheet));
  });
  // The first look of the day finds the page made, and whatever it lacks under way.
  api.addHook('onListen', async () => void warm().catch(() => {}));
  const warm = async () => {
    for (const { id } of await store.shops.list()) {
      await fleetPage(store, id, dayOf(desk, undefined)).then(fleetText, () => null);
      keeper.look(id);
    }
  };
  api.get<OfShop>('/shops/:shop/fleet/due', async (request, reply) => {
    const { format, day, ...span } = parseDocument(zDue, request.query, 'due sheet request');
    keeper.look(request.params.shop);
    const on = { day: dayOf(desk, day), today: dayOf(desk, undefined) };
    return sendSheet(reply, await duePage(store, request.params.shop, on, span), format, 'due-sheet');
  });
  api.get<OfShop>('/shops/:shop/fleet/readings', async (request) => {
    keeper.look(request.params.shop);
    return readingsPage(store, request.params.shop, dayOf(desk, request.query.day), dayOf(desk, undefined));
  });
  /** Keeps what owners were asked, in the words that went to them. */
  api.post<{ Params: { shop: string } }>('/shops/:shop/fleet/readings', async (request) => {
    const { requests, by } = parseDocument(zAsk, request.body, 'request for readings');
    const known = new Set((await store.aircraft.list(request.params.shop)).map((a) => a.id));
    const unknown = requests.find((r) => !known.has(r.aircraft));
    if (unknown)
      throw new Refusal('server.not-found', {
        given: `aircraft "${unknown.aircraft}"`,
        allowed: 'an aircraft of this shop',
        remedy: 'Choose one from the list',
      });
    const entries = requests.map(({ aircraft, words }) => ({
      subject: aircraft,
      kind: 'request',
      day: dayOf(desk, undefined) as Day,
      order: 0,
      body: { asks: 'reading', words, by },
      schema: 'request/1',
      evidence: 'seen',
    }));
    return { numbers: await store.log.append(request.params.shop, entries, by, new Date().toISOString()) };
  });
}
