import type { Command } from 'commander';
import { WORDS, type Word } from '../server/words.ts';
import { readInput } from './read.ts';
import { sheetText } from './sheet-text.ts';

/** sparwright record | directive | outlook FILE */
export function answerCommands(program: Command): void {
  for (const word of Object.keys(WORDS) as Word[])
    program
      .command(word)
      .description(`${WORDS[word].asks} Answers one document; needs no database.`)
      .argument('<file>', 'YAML or JSON document, - for standard input')
      .option('--json', 'print { value, working, warnings } for programs')
      .addHelpText(
        'after',
        `\nA complete document:  sparwright example ${word}\nIts schema:           sparwright schema ${word}`,
      )
      .action((file: string, options: { json?: boolean }) => {
        const input = readInput(file);
        if (options.json) {
          const { value, working, warnings } = WORDS[word].answer(input);
          process.stdout.write(`${JSON.stringify({ value, working, warnings }, null, 2)}\n`);
        } else process.stdout.write(sheetText(WORDS[word].sheet(input)));
      });
}
