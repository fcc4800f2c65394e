import type { FastifyInstance } from 'fastify';
import { record } from '../../engine/index.ts';
import { aircraftSheet } from '../../sheets/index.ts';
import { type Desk, gather } from '../desk.ts';

interface OfAircraft {
  Params: { shop: string; id: string };
  Querystring: { day?: string; rate_h_per_year?: string };
}

/** One aircraft: its page, and what its forms can choose from. */
export function aircraftRoutes(api: FastifyInstance, desk: Desk): void {
  api.get<OfAircraft>('/shops/:shop/aircraft/:id', async (request) => {
    const { shop, model, ...g } = await gather(desk, request.params.shop, request.params.id, request.query);
    return aircraftSheet({ ...g, record: model, shop });
  });
  api.get<OfAircraft>('/shops/:shop/aircraft/:id/choices', async (request) => {
    const { thing, parts, day, documents, model } = await gather(
      desk,
      request.params.shop,
      request.params.id,
      request.query,
    );
    const meters = new Set(
      model.entries
        .filter((e) => e.kind === 'meter' && e.subject === thing.id)
        .map((e) => (e.body as { meter: string }).meter),
    );
    return {
      registration: thing.attributes.registration?.value ?? thing.id,
      day,
      parts: parts.map((p) => ({ id: p.id, name: partName(p) })),
      meters: [...meters],
      uses: record.USES,
      directives: documents.map((d) => ({
        number: d.number,
        issue: d.issue,
        title: d.title,
        actions: d.actions.map(({ id, title }) => ({ id, title })),
      })),
    };
  });
}

const partName = (p: record.Thing): string =>
  `${p.hand === 'none' ? '' : `${p.hand} `}${p.what.replaceAll('_', ' ')}`.replace(/^./, (c) => c.toUpperCase());
