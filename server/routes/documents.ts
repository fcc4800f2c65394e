import type { FastifyInstance } from 'fastify';
import { answerSheet, WORDS, type Word } from '../words.ts';

/** Document in, sheet out: the same answer that the command of the same word gives. Needs no store. */
export function documentRoutes(api: FastifyInstance): void {
  for (const word of Object.keys(WORDS) as Word[])
    api.post(`/${word}`, async (request) => answerSheet(word, request.body));
}
