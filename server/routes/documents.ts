import type { FastifyInstance } from 'fastify';
import { answerSheet, WORDS, type Word } from '../words.ts';

/** Drawn while the others wait. */
const MOST_LIVES = 2000;

/** Document in, sheet out: the same answer that the command of the same word gives. Needs no store. */
export function documentRoutes(api: FastifyInstance): void {
  for (const word of Object.keys(WORDS) as Word[])
    api.post(`/${word}`, async (request) => {
      const { units } = request.query as { units?: string };
      return answerSheet(word, request.body, { mostLives: MOST_LIVES, units: units === 'inch' ? 'inch' : 'mm' });
    });
}
