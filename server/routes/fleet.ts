import type { FastifyInstance } from 'fastify';
import { fleetSheet } from '../../sheets/index.ts';
import { type Desk, dayOf } from '../desk.ts';
import { fleetOf } from '../fleet/fleet-of.ts';
import type { Keeper } from '../fleet/keeper.ts';

interface OfShop {
  Params: { shop: string };
  Querystring: { day?: string };
}

/** Who is due when, from stored answers; what they lack is computed in the background. */
export function fleetRoutes(api: FastifyInstance, desk: Desk, keeper: Keeper): void {
  const { store } = desk;
  api.get<OfShop>('/shops/:shop/fleet', async (request) => {
    const shop = await store.shops.get(request.params.shop);
    const day = dayOf(desk, request.query.day);
    keeper.look(shop.id);
    return fleetSheet({ shop, day, known: shop.last, aircraft: await fleetOf(store, shop.id, day) });
  });
}
