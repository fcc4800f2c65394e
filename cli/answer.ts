import { type Command, Option } from 'commander';
import { JOB_PAGES, type JobPage } from '../server/teardown/sheets.ts';
import { answerSheet, WORDS, type Word } from '../server/words.ts';
import type { Units } from '../sheets/index.ts';
import { progressLine } from './progress.ts';
import { readInput } from './read.ts';
import { sheetText } from './sheet-text.ts';

/** sparwright record | directive | outlook | usage | growth | structure | floor | teardown FILE */
export function answerCommands(program: Command): void {
  for (const word of Object.keys(WORDS) as Word[]) {
    const command = program
      .command(word)
      .description(`${WORDS[word].asks} Answers one document; needs no database.`)
      .argument('<file>', 'YAML or JSON document, - for standard input')
      .option('--json', 'print { value, working, warnings } for programs');
    if (MEASURED.includes(word)) command.addOption(units());
    if (word === 'teardown') command.addOption(page());
    command
      .addHelpText(
        'after',
        `\nA complete document:  sparwright example ${word}\nIts schema:           sparwright schema ${word}`,
      )
      .action((file: string, options: { json?: boolean; units?: Units; page?: JobPage }) => {
        const input = readInput(file);
        const progress = progressLine();
        if (options.json) {
          const { value, working, warnings } = WORDS[word].answer(input, { progress });
          process.stdout.write(`${JSON.stringify({ value, working, warnings }, null, 2)}\n`);
        } else
          process.stdout.write(
            sheetText(answerSheet(word, input, { units: options.units, page: options.page, progress })),
          );
      });
  }
}
/** Words whose answers hold lengths and stresses. */
const MEASURED: readonly Word[] = ['usage', 'growth', 'structure', 'teardown'];
const units = (): Option =>
  new Option('--units <units>', 'lengths and stresses as the reader wants them').choices(['mm', 'inch']).default('mm');
const page = (): Option =>
  new Option('--page <page>', 'which page of the job to print').choices([...JOB_PAGES]).default('plan');
