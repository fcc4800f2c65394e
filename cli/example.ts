import type { Command } from 'commander';
import { stringify } from 'yaml';
import { WORDS, type Word } from '../server/words.ts';
import { wordOf } from './word.ts';

/** sparwright example WORD */
export function exampleCommand(program: Command): void {
  program
    .command('example')
    .description('Print a complete, valid document of a word (invented data).')
    .argument('<word>', Object.keys(WORDS).join(', '))
    .option('--json', 'as JSON instead of YAML')
    .action((given: string, options: { json?: boolean }) => {
      const word: Word = wordOf(given);
      const { example } = WORDS[word];
      process.stdout.write(
        options.json ? `${JSON.stringify(example, null, 2)}\n` : stringify(example, { aliasDuplicateObjects: false }),
      );
    });
}
