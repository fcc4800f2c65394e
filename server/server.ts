import { existsSync } from 'node:fs';
import { join } from 'node:path';
import helmet from '@fastify/helmet';
import multipart from '@fastify/multipart';
import files from '@fastify/static';
import fastify, { type FastifyError, type FastifyInstance, type FastifyReply, type FastifyRequest } from 'fastify';
import { Refusal } from '../engine/index.ts';
import type { Store } from '../store/index.ts';
import { answerFaults } from './faults.ts';
import { Keeper, watched } from './fleet/keeper.ts';
import { guardLocal } from './guard.ts';
import { aircraftRoutes } from './routes/aircraft.ts';
import { approvalRoutes } from './routes/approvals.ts';
import { backupRoutes } from './routes/backup.ts';
import { callerRoutes } from './routes/caller.ts';
import { complianceRoutes } from './routes/compliance.ts';
import { directiveRoutes } from './routes/directive/index.ts';
import { documentCheckRoutes } from './routes/document-check.ts';
import { documentRoutes } from './routes/documents.ts';
import { fleetRoutes } from './routes/fleet.ts';
import { growthRoutes } from './routes/growth.ts';
import { importRoutes } from './routes/import.ts';
import { letterRoutes } from './routes/letter.ts';
import { papersRoutes } from './routes/papers.ts';
import { readingRoutes } from './routes/reading.ts';
import { shopRoutes } from './routes/shops.ts';
import { teardownRoutes } from './routes/teardown.ts';
import { usageRoutes } from './routes/usage.ts';
import { whatIfRoutes } from './routes/what-if.ts';
import { workRoutes } from './routes/work.ts';
import { runningRoute } from './running.ts';
import { Hands } from './work/hands.ts';
import { Works } from './work/works.ts';

const MEGABYTE = 1024 * 1024;
export const LARGEST_FILE = 20 * MEGABYTE;

export interface ServerOptions {
  readonly store: Store;
  readonly root: string;
  /** Today, for tests; the clock of this machine otherwise. */
  readonly today?: () => string;
}

/** The server: parse -> store and engine -> sheet. */
export async function createServer(options: ServerOptions): Promise<FastifyInstance> {
  const web = join(options.root, 'dist', 'web');
  const app = fastify({
    logger: false,
    bodyLimit: LARGEST_FILE,
    forceCloseConnections: true,
    frameworkErrors: badAddress(existsSync(web)),
  });
  answerFaults(app, (e) => options.store.faultInWords(e));
  guardLocal(app);
  await app.register(helmet, {
    contentSecurityPolicy: {
      directives: {
        defaultSrc: ["'self'"],
        scriptSrc: ["'self'"],
        styleSrc: ["'self'"],
        imgSrc: ["'self'", 'data:', 'blob:'],
        objectSrc: ["'none'"],
        upgradeInsecureRequests: null,
      },
    },
    strictTransportSecurity: false,
  });
  await app.register(multipart, { limits: { fileSize: LARGEST_FILE, files: 1, fields: 10 } });
  const today = options.today ?? (() => localDay(new Date()));
  const keeper = new Keeper({ store: options.store, today });
  const hands = new Hands();
  const desk = { store: watched(options.store, keeper), today, hands };
  app.addHook('onClose', () => keeper.close());
  const works = new Works(hands);
  app.addHook('onClose', () => works.close());
  await app.register(
    async (api) => {
      shopRoutes(api, desk);
      aircraftRoutes(api, desk);
      callerRoutes(api, desk);
      importRoutes(api, desk);
      directiveRoutes(api, desk);
      documentCheckRoutes(api, desk);
      usageRoutes(api, desk);
      growthRoutes(api, desk);
      teardownRoutes(api, desk);
      letterRoutes(api, desk);
      papersRoutes(api, desk);
      fleetRoutes(api, desk, keeper);
      whatIfRoutes(api, desk);
      workRoutes(api, desk, works);
      complianceRoutes(api, desk);
      approvalRoutes(api, desk);
      readingRoutes(api, desk);
      documentRoutes(api);
      backupRoutes(api, desk);
      runningRoute(api, desk);
    },
    { prefix: '/api' },
  );
  if (existsSync(web)) await app.register(files, { root: web, wildcard: false });
  app.setNotFoundHandler((request, reply) => {
    if (request.method === 'GET' && !request.url.startsWith('/api/') && existsSync(web))
      return reply.sendFile('index.html');
    throw new Refusal('server.not-found', {
      given: `${request.method} ${request.url}`,
      allowed: 'the pages and routes of this program',
      remedy: 'Go to the start page',
    });
  });
  return app;
}

/** An address that cannot be read is a page that is not there; the pages say so. For a program it is refused in lines. */
const badAddress =
  (pages: boolean) =>
  (error: FastifyError, request: FastifyRequest, reply: FastifyReply): void => {
    if (pages && request.method === 'GET' && !request.url.startsWith('/api/')) void reply.redirect(NO_PAGE);
    else
      void reply.status(error.statusCode ?? 400).send({
        code: 'server.not-found',
        given: `${request.method} ${request.url}`,
        allowed: 'the pages and routes of this program',
        remedy: 'Go to the start page',
      });
  };
const NO_PAGE = '/no/page/at/this/address';

/** The day on the wall of this machine. */
const localDay = (d: Date): string =>
  `${d.getFullYear()}-${String(d.getMonth() + 1).padStart(2, '0')}-${String(d.getDate()).padStart(2, '0')}`;
