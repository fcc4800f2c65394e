import type { FastifyInstance } from 'fastify';
import { clockCaution } from '../clock.ts';
import { openDemo } from '../demo.ts';
import type { Desk } from '../desk.ts';
import { newEntries } from '../entries.ts';

/** Shops, their aircraft, their entries and files. The invented scenario is a shop of its own. */
export function shopRoutes(api: FastifyInstance, desk: Desk): void {
  const { store } = desk;
  api.get('/shops', async () => {
    await store.shops.open({ id: 'own', name: 'This shop', invented: false });
    const now = new Date().toISOString();
    const shops = await store.shops.list();
    return Promise.all(
      shops.map(async ({ id, name, invented, aircraft, last }) => {
        const clock = await clockCaution(store, id, now);
        return { id, name, invented, aircraft, entries: last, ...(clock ? { clock } : {}) };
      }),
    );
  });
  api.post('/demo', async () => ({ shop: await openDemo(store) }));
  api.delete<{ Params: { shop: string } }>('/shops/:shop', async (request) => {
    await store.shops.drop(request.params.shop);
    return {};
  });
  api.post<{ Params: { shop: string }; Body: { entries?: unknown; expect_last?: number } }>(
    '/shops/:shop/entries',
    async (request) => {
      const entries = newEntries(request.body?.entries);
      const expectLast = request.body?.expect_last;
      const options = expectLast === undefined ? {} : { expectLast };
      return {
        numbers: await store.log.append(request.params.shop, entries, 'the desk', new Date().toISOString(), options),
      };
    },
  );
  api.post('/shops/:shop/files', async (request) => {
    const part = await request.file();
    if (!part) return { sha256: null };
    return { sha256: await store.files.put(await part.toBuffer(), part.mimetype) };
  });
  api.get<{ Params: { shop: string; sha256: string } }>('/shops/:shop/files/:sha256', async (request, reply) => {
    const file = await store.files.get(request.params.sha256);
    if (!file) return reply.callNotFound();
    const shown = /^(image\/(png|jpeg|webp)|application\/pdf)$/.test(file.mediaType);
    return reply
      .header('content-type', shown ? file.mediaType : 'application/octet-stream')
      .header('content-disposition', shown ? 'inline' : 'attachment')
      .send(Buffer.from(file.bytes));
  });
}
