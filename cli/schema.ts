import type { Command } from 'commander';
import { WORDS } from '../server/words.ts';
import { wordOf } from './word.ts';

/** sparwright schema WORD */
export function schemaCommand(program: Command): void {
  program
    .command('schema')
    .description('Print the JSON Schema of a word’s document.')
    .argument('<word>', Object.keys(WORDS).join(', '))
    .action((word: string) => {
      process.stdout.write(`${JSON.stringify(WORDS[wordOf(word)].schema(), null, 2)}\n`);
    });
}
