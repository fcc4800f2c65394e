import type { FastifyError, FastifyInstance } from 'fastify';
import { isRefusal, type Refusal, type RefusalCode } from '../engine/index.ts';

/** Codes that answer with another status than 422, "understood, but not acceptable". */
const STATUS: Partial<Record<RefusalCode, number>> = {
  'store.shop-unknown': 404,
  'store.changed-meanwhile': 409,
  'server.not-found': 404,
  'directive.not-adopted': 404,
  'server.too-large': 413,
  'store.database-unreachable': 503,
  'store.disk-full': 507,
};

/**
 * Errors outward: a refusal with its three lines; anything else as one sentence, its details in the log only.
 * @param inWords what the store knows of a fault of disk or connection
 */
export function answerFaults(app: FastifyInstance, inWords: (e: unknown) => Refusal | null = () => null): void {
  app.setErrorHandler((fault: FastifyError, request, reply) => {
    const error = isRefusal(fault) ? fault : (inWords(fault) ?? fault);
    if (isRefusal(error)) return reply.status(STATUS[error.code] ?? 422).send({ code: error.code, ...error.detail });
    const status = error.statusCode ?? 500;
    if (status === 413 || error.code === 'FST_REQ_FILE_TOO_LARGE')
      return reply.status(413).send({
        code: 'server.too-large',
        given: 'a body or file larger than this program takes',
        allowed: 'at most 20 MB',
        remedy: 'Send the logbook in parts, or save it without pictures',
      });
    if (status >= 500) process.stderr.write(`${request.method} ${request.url}: ${error.stack ?? error.message}\n`);
    return reply.status(status).send({
      code: status >= 500 ? 'server.fault' : 'server.bad-request',
      given: status >= 500 ? 'the program met a fault of its own; nothing was recorded' : error.message,
      allowed: 'a request as the pages make it',
      remedy:
        status >= 500
          ? 'Try again; if it comes back, note what you did and look at the program’s output'
          : 'Correct it and try again',
    });
  });
}
