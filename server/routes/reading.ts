import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { FastifyInstance } from 'fastify';
import { refusalsSheet, type ShownRefusal } from '../../sheets/index.ts';
import { rootFolder } from '../../store/index.ts';
import { type Desk, dayOf } from '../desk.ts';
import { manual, picturePath } from '../manual.ts';
import { methodSheet } from '../methods.ts';

/** What a person reads about the program itself: how each word computes, and every way it says no. */
export function readingRoutes(api: FastifyInstance, desk: Desk): void {
  api.get<{ Params: { word: string } }>('/methods/:word', async ({ params }) =>
    methodSheet(params.word, dayOf(desk, undefined)),
  );
  api.get('/manual', async () => manual());
  api.get<{ Params: { name: string } }>('/manual/:name', async ({ params }, reply) =>
    reply.type('image/png').send(readFileSync(picturePath(params.name))),
  );
  api.get('/refusals', async () => {
    const file = join(rootFolder(), 'examples', 'refusals', 'gallery.json');
    return refusalsSheet(JSON.parse(readFileSync(file, 'utf8')) as ShownRefusal[], dayOf(desk, undefined));
  });
}
