import type { FastifyInstance } from 'fastify';
import type { Desk } from '../desk.ts';
import { whatIf, whatIfChoices } from '../what-if.ts';

interface OfAircraft {
  Params: { shop: string; id: string };
}

/** What if it flew otherwise, a part moved, a paper turned up: side by side with today, nothing stored. */
export function whatIfRoutes(api: FastifyInstance, desk: Desk): void {
  api.get<OfAircraft>('/shops/:shop/aircraft/:id/what-if', async ({ params }) =>
    whatIfChoices(desk, params.shop, params.id),
  );
  api.post<OfAircraft>('/shops/:shop/aircraft/:id/what-if', async ({ params, body }) =>
    whatIf(desk, params.shop, params.id, body),
  );
}
