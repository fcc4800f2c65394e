import type { FastifyInstance } from 'fastify';

const LOCAL = /^(127\.0\.0\.1|localhost|\[::1\])(:\d+)?$/;

/**
 * Before accounts exist the program serves this machine only: a request must name a local host, and a page of
 * another site must not be able to write (Origin).
 */
export function guardLocal(app: FastifyInstance): void {
  app.addHook('onRequest', async (request, reply) => {
    const host = request.headers.host ?? '';
    const origin = request.headers.origin;
    const sameOrigin = origin === undefined || origin === `http://${host}`;
    if (LOCAL.test(host) && (sameOrigin || request.method === 'GET')) return;
    await reply.status(403).send({
      code: 'server.not-local',
      given: `a request to "${host}" from ${origin ?? 'no page'}`,
      allowed: 'requests of this machine to its own address',
      remedy: 'Open the address that the program printed when it started',
    });
  });
}
