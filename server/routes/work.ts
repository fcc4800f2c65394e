import type { FastifyInstance } from 'fastify';
import type { Desk } from '../desk.ts';
import { chanceAsked } from '../growth-chance.ts';
import type { Seen, Works } from '../work/works.ts';

interface OfWork {
  Params: { id: string };
}
const shown = ({ done, of, result, refusal }: Seen) => ({
  done,
  of,
  ...(result === undefined ? {} : { sheet: result }),
  ...(refusal ? { refusal: { code: refusal.code, ...refusal.detail } } : {}),
});

/** Long work: asked for in its shop, then looked at and stopped by its number. Nothing of it is stored. */
export function workRoutes(api: FastifyInstance, desk: Desk, works: Works): void {
  api.post<{ Params: { shop: string } }>('/shops/:shop/growth/chance', async ({ params, body }, reply) =>
    reply.status(202).send({ work: works.begin(await chanceAsked(desk, params.shop, body)) }),
  );
  api.get<OfWork>('/work/:id', async ({ params }) => shown(works.look(params.id)));
  api.delete<OfWork>('/work/:id', async ({ params }) => {
    works.stop(params.id);
    return { stopped: params.id };
  });
}
