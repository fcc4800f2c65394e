import { PassThrough } from 'node:stream';
import type { FastifyInstance } from 'fastify';
import { Refusal } from '../../engine/index.ts';
import type { Desk } from '../desk.ts';
import { PROGRAM } from '../version.ts';

/** A copy of every shop as a download, and the way back into a store in which nothing is recorded. */
export function backupRoutes(api: FastifyInstance, desk: Desk): void {
  const { store } = desk;
  api.get('/backup', (_, reply) => {
    const out = new PassThrough();
    // Cut short, the browser says so, and the file would be refused: its seal is missing.
    store.backupTo(out, { program: PROGRAM, at: new Date().toISOString() }).catch((e) => out.destroy(e));
    return reply
      .header('content-type', 'application/gzip')
      .header('content-disposition', `attachment; filename="sparwright-${desk.today()}.jsonl.gz"`)
      .header('cache-control', 'no-store')
      .send(out);
  });
  api.post('/restore', async (request) => {
    const part = await request.file({ limits: { fileSize: Number.POSITIVE_INFINITY } });
    if (!part)
      throw new Refusal('cli.file-missing', {
        given: 'no file',
        allowed: 'a copy that this program made',
        remedy: 'Choose the file',
      });
    const { head, shops, problems } = await store.restore(part.file, { emptyOnly: true });
    return { made_at: head.made_at, shops, problems };
  });
}
