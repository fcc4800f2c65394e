import { Refusal } from '../engine/index.ts';
import { WORDS, type Word } from '../server/words.ts';

/** @throws Refusal `cli.word-unknown` */
export function wordOf(given: string): Word {
  if (Object.hasOwn(WORDS, given)) return given as Word;
  throw new Refusal('cli.word-unknown', {
    given: `"${given}"`,
    allowed: Object.keys(WORDS).join(', '),
    remedy: 'Use one of these words',
  });
}
