import type { FastifyInstance } from 'fastify';
import { record } from '../../engine/index.ts';
import { aircraftSheet } from '../../sheets/index.ts';
import { type Desk, gather, read } from '../desk.ts';
import { gatherKnown, knownAt, withKnown } from '../known.ts';

interface OfAircraft {
  Params: { shop: string; id: string };
  Querystring: { day?: string; rate_h_per_year?: string; known?: string; known_on?: string };
}

/** One aircraft: its page, and what its forms can choose from. */
export function aircraftRoutes(api: FastifyInstance, desk: Desk): void {
  api.get<OfAircraft>('/shops/:shop/aircraft/:id', async (request) => {
    const { shop, id } = request.params;
    const known = await knownAt(desk, shop, request.query);
    const g = known
      ? await gatherKnown(desk, shop, id, known, request.query)
      : await gather(desk, shop, id, request.query);
    const sheet = aircraftSheet({ ...g, record: g.model });
    return known ? withKnown(desk, g, known, sheet) : sheet;
  });
  api.get<OfAircraft>('/shops/:shop/aircraft/:id/choices', async (request) => {
    const { id, shop } = request.params;
    const { day, documents, model } = await read(desk, shop, id, request.query);
    const thing = model.things.get(id);
    const parts = [...model.things.values()].filter((t) => t.kind === 'part' && t.aircraft === id);
    const meters = new Set(
      model.entries.flatMap((e) => (e.kind === 'meter' && e.subject === id ? [e.body.meter] : [])),
    );
    return {
      registration: thing?.attributes.registration?.value ?? id,
      day,
      parts: parts.map((p) => ({ id: p.id, name: partName(p), what: p.what, hand: p.hand })),
      meters: [...meters],
      uses: record.USES,
      directives: documents.map((d) => ({
        number: d.number,
        issue: d.issue,
        title: d.title,
        actions: d.actions.map(({ id, title, looks_at }) => ({ id, title, looks_at })),
      })),
    };
  });
}

const partName = (p: record.Thing): string =>
  `${p.hand === 'none' ? '' : `${p.hand} `}${p.what.replaceAll('_', ' ')}`.replace(/^./, (c) => c.toUpperCase());
